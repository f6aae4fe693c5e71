package steadypull.advice;

import java.util.List;
import java.util.stream.Collectors;

/** A rule file was refused as a whole; every fault is named with file, line and column. */
public final class RuleFileException extends Exception {
  private static final long serialVersionUID = 1;

  private final String found;

  private RuleFileException(String found, String toDo) {
    super(found + toDo);
    this.found = found;
  }

  /**
   * Says what was tried, expected, found, and what to do.
   *
   * @param file name of the file as the user knows it
   * @param faults at least one
   */
  RuleFileException(String file, List<RuleFault> faults) {
    this(
        faults.stream()
            .map(each -> "%s:%d:%d: %s".formatted(file, each.line(), each.column(), each.message()))
            .collect(
                Collectors.joining(
                    "\n  ",
                    "Reading rules, found %d fault%s:\n  "
                        .formatted(faults.size(), faults.size() == 1 ? "" : "s"),
                    "")),
        "\nNo rule of this file is in force. Correct it and try again.");
  }

  /** A file that could not be read at all. */
  RuleFileException(String file, Exception cause) {
    this(
        "Reading rules from %s failed: expected a readable text file, found %s."
            .formatted(file, cause),
        " Check the path.");
    initCause(cause);
  }

  /** The same faults, told where other rules are in force meanwhile. */
  String meanwhile(boolean isBefore) {
    return found
        + (isBefore
            ? "\nWhat this file held before it was changed stays in force. Correct it."
            : "\nThe rules without this file are in force. Correct it.");
  }
}
