package steadypull.cli;

import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.Model.OptionSpec;

/** Tells of options of an import that do nothing for the files that were given. Stateless. */
final class IdleOptions {
  private static final Set<Taking.Kind> TABLES = Set.of(Taking.Kind.TABLE);
  private static final Set<Taking.Kind> TRIPS = Set.of(Taking.Kind.TABLE, Taking.Kind.TRIP);

  /** What each option is for. */
  private static final Map<String, Set<Taking.Kind>> USES =
      Map.ofEntries(
          Map.entry("--vehicle", TABLES),
          Map.entry("--rig", TABLES),
          Map.entry("--map", TABLES),
          Map.entry("--zone", TABLES),
          Map.entry("--again", TABLES),
          Map.entry("--start", TABLES),
          Map.entry("--label", TRIPS),
          Map.entry("--note", TRIPS),
          Map.entry("--tag", TRIPS),
          Map.entry("--fitted", TRIPS),
          Map.entry("--outside", TRIPS),
          Map.entry("--outside-temp", TRIPS));

  private IdleOptions() {}

  /** A line for each such option, in the order of the command's help. */
  static List<String> words(SteadypullCommand main, Set<Taking.Kind> given) {
    return main.commandLine().getParseResult().subcommand().matchedOptions().stream()
        .map(OptionSpec::longestName)
        .filter(name -> isIdle(USES.getOrDefault(name, given), given))
        .distinct()
        .map(IdleOptions::word)
        .toList();
  }

  private static boolean isIdle(Set<Taking.Kind> uses, Set<Taking.Kind> given) {
    return uses.stream().noneMatch(given::contains);
  }

  private static String word(String option) {
    return "%s did nothing: it is for %s, and there is none among the files."
        .formatted(
            option, TABLES.equals(USES.get(option)) ? "trip tables" : "trip tables and trip files");
  }
}
