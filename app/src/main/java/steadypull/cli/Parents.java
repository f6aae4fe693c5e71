package steadypull.cli;

import org.jspecify.annotations.Nullable;

/** The main command above a command; picocli sets it before a command is called. */
final class Parents {
  private Parents() {}

  static SteadypullCommand require(@Nullable SteadypullCommand parent) {
    if (parent == null) {
      throw new IllegalStateException("Commands run through SteadypullCommand.run");
    }
    return parent;
  }
}
