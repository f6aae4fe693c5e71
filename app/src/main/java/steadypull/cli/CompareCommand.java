package steadypull.cli;

import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.compare.Comparison;
import steadypull.report.ComparisonText;
import steadypull.report.ComparisonWords;

/** Says what a change of the cooling did. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    header = "Says what a change of the cooling did, from runs before and after it.",
    description = {
      "Pulls and climbs are found by their load, laid over each other at its onset, and brought to"
          + " the same conditions by a model that is identified from them. The verdict is proven,"
          + " likely, or not proven yet with what is missing. Every run is listed, those that"
          + " cannot be compared with the reason.",
      "Sides may be named more than once: --before A --after B --before C keeps its order."
    })
final class CompareCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Mixin private CompareOptions options = new CompareOptions();

  @Option(names = "--json", description = "Prints an object for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    ComparedTrips.Found compared =
        new ComparedTrips(main, Parents.under(main, "compare"), options).compare();
    Comparison found = compared.comparison();
    main.out().print(json ? json(found, main.locale()) : text(found, main));
    main.out().flush();
    return compared.status();
  }

  /** Whatever the reader's units are: machines read metric ones. */
  private static String json(Comparison found, Locale locale) {
    return CompareJson.of(
            new ComparisonWords(found, locale, new QuantityFormat(locale, UnitSystem.METRIC)))
        + "\n";
  }

  private static String text(Comparison found, SteadypullCommand main) {
    return ComparisonText.of(new ComparisonWords(found, main.locale(), main.format()));
  }
}
