package steadypull.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;
import steadypull.report.ComparisonReport;
import steadypull.report.ReportFile;

/** Prints what a change of the cooling did. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    header = "Writes what a change of the cooling did, as the command compare says it.",
    description =
        "The verdict first, then pictures and tables, every run, the method in plain words, and"
            + " what it does not say.")
final class ReportCompareCommand implements Callable<Integer> {
  @ParentCommand private @Nullable ReportCommand report;

  @Mixin private CompareOptions options = new CompareOptions();

  @Mixin private LetterheadOptions letterhead = new LetterheadOptions();

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = ReportCommand.main(report);
    var head = letterhead.head(main);
    ComparedTrips.Found found =
        new ComparedTrips(main, Parents.under(main, "report", "compare"), options).compare();
    ReportFile.write(
        ComparisonReport.of(
            found.comparison(), found.vehicle().name(), head, main.locale(), main.format()),
        letterhead.to());
    main.err().printf("Wrote %s.%n", letterhead.to());
    main.err().flush();
    return found.status();
  }
}
