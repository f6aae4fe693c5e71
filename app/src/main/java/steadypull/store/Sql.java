package steadypull.store;

import org.jdbi.v3.core.locator.ClasspathSqlLocator;

/** Finds statements in the {@code .sql} files beside this package, by the name of the file. */
final class Sql {
  private static final ClasspathSqlLocator FILES = ClasspathSqlLocator.create();

  private Sql() {}

  static String of(String name) {
    return FILES.locate("steadypull.store." + name);
  }
}
