package steadypull.cli;

import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.MutuallyExclusiveArgsException;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * What is said of wrong usage, the same for every command: what was tried, what was expected, what
 * was found and what to do.
 *
 * @param tried such as {@code run "steadypull trips"}
 * @param complaint what was expected and what was found
 * @param remedy what to do, a sentence without its full stop
 */
record MisuseText(String tried, String complaint, String remedy) {
  private static final String LEAVE_AWAY = "Leave it away";

  static MisuseText of(ParameterException misuse) {
    return switch (misuse) {
      case Misuse own -> of(own, own.complaint(), own.remedy());
      case UnmatchedArgumentException unmatched -> unmatched(unmatched);
      case MissingParameterException missing -> missing(missing);
      case OverwrittenOptionException twice -> twice(twice);
      case MutuallyExclusiveArgsException several ->
          of(
              several,
              complaint("one of several options", "more than one"),
              "Leave all but one away");
      default -> unreadable(misuse);
    };
  }

  static String complaint(String expected, String found) {
    return "expected %s, found %s".formatted(expected, found);
  }

  /** One line, and no character that would steer a terminal. */
  String line() {
    return Printable.line("Could not %s: %s. %s.".formatted(tried, complaint, remedy));
  }

  private static MisuseText of(ParameterException misuse, String complaint, String remedy) {
    return new MisuseText("run " + command(misuse), complaint, remedy);
  }

  private static MisuseText unmatched(UnmatchedArgumentException misuse) {
    var commands = misuse.getCommandLine().getSubcommands().keySet();
    String found = quoted(String.join(" ", misuse.getUnmatched()));
    if (misuse.isUnknownOption()) {
      return of(misuse, complaint("an option of this command", found), nearest(misuse));
    }
    return commands.isEmpty()
        ? of(misuse, complaint("no further argument", found), LEAVE_AWAY)
        : of(
            misuse,
            complaint("a command (" + String.join(", ", commands) + ")", found),
            nearest(misuse));
  }

  private static String nearest(UnmatchedArgumentException misuse) {
    List<String> near = misuse.getSuggestions();
    return near.isEmpty()
        ? LEAVE_AWAY
        : "Did you mean " + String.join(" or ", near) + "? If not, leave it away";
  }

  private static MisuseText missing(MissingParameterException misuse) {
    List<ArgSpec> all = misuse.getMissing();
    boolean isOneWanted = all.stream().anyMatch(MisuseText::isAlternative);
    String wanted =
        all.stream()
            .map(MisuseText::form)
            .collect(Collectors.joining(isOneWanted ? " or " : " and "));
    return of(
        misuse, complaint(wanted, "nothing in its place"), isOneWanted ? "Add one" : "Add it");
  }

  /** Whether it is one of a group of which one is to be said. */
  private static boolean isAlternative(ArgSpec argument) {
    return argument.group() != null && argument.group().exclusive();
  }

  private static MisuseText twice(OverwrittenOptionException misuse) {
    String option = form(misuse.getOverwritten());
    return of(misuse, complaint(option + " once", "it more than once"), "Leave one away");
  }

  /** A value that its option cannot take. */
  private static MisuseText unreadable(ParameterException misuse) {
    ArgSpec argument = misuse.getArgSpec();
    if (argument == null) {
      return of(misuse, complaint("what the usage shows", Explanation.of(misuse)), "Correct it");
    }
    String tried = "read %s of %s".formatted(name(argument), command(misuse));
    return new MisuseText(tried, complaint(misuse, argument), "Correct it");
  }

  /** Our own converters say both; those of the parser only that a value does not fit. */
  private static String complaint(ParameterException misuse, ArgSpec argument) {
    return misuse.getCause() instanceof TypeConversionException refused && isOurs(refused)
        ? Explanation.of(refused)
        : complaint(form(argument), quoted(misuse.getValue()));
  }

  private static boolean isOurs(TypeConversionException refused) {
    return String.valueOf(refused.getMessage()).startsWith("expected ");
  }

  /** As it is written, such as {@code --to FILE}. */
  private static String form(ArgSpec argument) {
    boolean isFlag = argument.arity().max() == 0;
    return argument instanceof OptionSpec option && !isFlag
        ? option.longestName() + " " + argument.paramLabel()
        : name(argument);
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }

  private static String command(ParameterException misuse) {
    return quoted(misuse.getCommandLine().getCommandSpec().qualifiedName());
  }

  private static String quoted(String text) {
    return "\"" + text + "\"";
  }
}
