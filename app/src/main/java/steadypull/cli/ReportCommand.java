package steadypull.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;

/** Writes forms for paper. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    header = "Writes a form for the customer: PDF, or HTML for a browser.",
    description =
        "Name and logo of the workshop come from workshop.toml in the library's folder (name ="
            + " \"...\", lines = [\"...\"], logo = \"logo.png\") or from options.",
    subcommands = {ReportCompareCommand.class, ReportTripCommand.class})
final class ReportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Override
  public Integer call() {
    throw new Misuse(
        Parents.under(main(this), "report"),
        "what to report: compare or trip",
        "nothing",
        "Write it behind report");
  }

  /** The main command. */
  static SteadypullCommand main(@Nullable ReportCommand report) {
    return Parents.require(report == null ? null : report.parent);
  }
}
