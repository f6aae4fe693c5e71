package steadypull.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import steadypull.report.Letterhead;
import steadypull.report.Logo;
import steadypull.report.ReportException;
import steadypull.report.WorkshopFile;

/** Whose form it is, for whom, and where it goes. */
final class LetterheadOptions {
  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      converter = ReportPlace.class,
      description = "Where to write: x.pdf or x.html.")
  private Path to = Path.of("");

  @Option(
      names = "--customer",
      paramLabel = "NAME",
      converter = PlainText.Label.class,
      description = "For whom it is.")
  private String customer = "";

  @Option(
      names = "--workshop",
      paramLabel = "NAME",
      converter = PlainText.Label.class,
      description = "Name of the workshop, in place of that in the library's workshop.toml.")
  private @Nullable String workshop;

  @Option(
      names = "--logo",
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Its logo, PNG or JPEG.")
  private @Nullable Path logo;

  Path to() {
    return to;
  }

  Letterhead head(SteadypullCommand main) throws ReportException {
    LocalDate today = LocalDate.ofInstant(main.program().wall().instant(), ZoneId.systemDefault());
    Letterhead head =
        WorkshopFile.read(
                main.libraryFolder(),
                Letterhead.Made.on(today, main.program().version(), main.locale()))
            .forCustomer(customer);
    if (workshop != null) {
      head = head.ofWorkshop(workshop);
    }
    return logo == null ? head : head.withLogo(Logo.read(logo));
  }
}
