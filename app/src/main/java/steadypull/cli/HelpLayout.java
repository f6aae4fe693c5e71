package steadypull.cli;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.IHelpSectionRenderer;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.ScopeType;

/** How help and wrong usage look: the same for every command, readable at 80 columns. */
final class HelpLayout {
  private static final String COMMON = "commonOptions";

  private HelpLayout() {}

  /** Lays out a command and those under it. */
  static void apply(CommandLine commandLine) {
    CommandSpec spec = commandLine.getCommandSpec();
    spec.usageMessage()
        .synopsisHeading("%nUsage: ")
        .descriptionHeading("%n")
        .parameterListHeading("%n")
        .commandListHeading("%nCommands (each has its own --help):%n")
        .sortOptions(false);
    separateCommonOptions(spec.usageMessage());
    commandLine.getSubcommands().values().forEach(HelpLayout::apply);
  }

  /** One line on what is wrong and one on where to read more; the exit status of wrong usage. */
  static int explainMisuse(CommandLine.ParameterException misuse, String[] arguments) {
    return refuse(misuse.getCommandLine(), MisuseText.of(misuse).line());
  }

  /** Says what is wrong with what was typed, and where to read more. */
  static int refuse(CommandLine commandLine, String message) {
    var err = commandLine.getErr();
    err.println(message);
    err.printf("\"%s --help\" shows the usage.%n", commandLine.getCommandSpec().qualifiedName());
    err.flush();
    return commandLine.getCommandSpec().exitCodeOnInvalidInput();
  }

  private static void separateCommonOptions(UsageMessageSpec usage) {
    Map<String, IHelpSectionRenderer> sections = usage.sectionMap();
    sections.put(
        UsageMessageSpec.SECTION_KEY_OPTION_LIST,
        help -> section("%nOptions:%n", help, option -> !isCommon(option)));
    sections.put(
        COMMON, help -> section("%nOptions of every command:%n", help, HelpLayout::isCommon));
    usage.sectionMap(sections);
    usage.sectionKeys(withCommonOptions(usage.sectionKeys()));
  }

  private static List<String> withCommonOptions(List<String> keys) {
    return keys.stream()
        .flatMap(
            key ->
                key.equals(UsageMessageSpec.SECTION_KEY_OPTION_LIST)
                    ? java.util.stream.Stream.of(key, COMMON)
                    : java.util.stream.Stream.of(key))
        .toList();
  }

  private static String section(String heading, Help help, Predicate<OptionSpec> wanted) {
    List<OptionSpec> options =
        help.commandSpec().options().stream()
            .filter(wanted)
            .filter(option -> !option.hidden())
            .toList();
    return options.isEmpty()
        ? ""
        : help.createHeading(heading) + help.optionListExcludingGroups(options);
  }

  private static boolean isCommon(OptionSpec option) {
    return option.inherited()
        || option.scopeType() == ScopeType.INHERIT
        || option.usageHelp()
        || option.versionHelp();
  }
}
