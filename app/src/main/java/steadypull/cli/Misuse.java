package steadypull.cli;

import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Options that each are right and together are not. */
final class Misuse extends ParameterException {
  private final String complaint;
  private final String remedy;

  /**
   * Says what is wrong.
   *
   * @param commandLine of the command
   * @param expected such as {@code one FILE}
   * @param found what was there instead
   * @param remedy what to do, a sentence without its full stop
   */
  Misuse(CommandLine commandLine, String expected, String found, String remedy) {
    super(commandLine, MisuseText.complaint(expected, found));
    this.complaint = MisuseText.complaint(expected, found);
    this.remedy = remedy;
  }

  /** The same for a command under the main one, by its name. */
  static Misuse of(
      SteadypullCommand main, String command, String expected, String found, String remedy) {
    CommandLine called = main.commandLine().getSubcommands().get(command);
    return new Misuse(Objects.requireNonNull(called, command), expected, found, remedy);
  }

  String complaint() {
    return complaint;
  }

  String remedy() {
    return remedy;
  }
}
