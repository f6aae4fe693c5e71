package steadypull.cli;

import steadypull.advice.RuleBook;
import steadypull.advice.RuleFolder;

/** The rules of the library that a command works on. Stateless. */
final class RulesInForce {
  private RulesInForce() {}

  /**
   * Reads them and tells what is faulty.
   *
   * @param mayWrite whether what is good is kept, for when its file is changed; a command that only
   *     reads leaves everything as it is
   */
  static RuleBook read(SteadypullCommand main, boolean mayWrite) {
    RuleFolder.InForce inForce = RuleFolder.in(main.libraryFolder()).read(mayWrite);
    inForce.complaints().forEach(main.err()::println);
    main.err().flush();
    return inForce.book();
  }
}
