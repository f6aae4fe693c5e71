package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Forms on disk, as a workshop asks for them. */
@Execution(ExecutionMode.CONCURRENT)
class ReportCommandTest {
  @TempDir Path folder;

  private Desk desk;
  private Path library;
  private String before;
  private String after;

  @BeforeEach
  void write() throws Exception {
    library = folder.resolve("library");
    desk = new Desk(library);
    before = InventedPulls.write(folder.resolve("before.csv"), 18_000, 100, 20, 1).toString();
    after = InventedPulls.write(folder.resolve("after.csv"), 36_000, 140, 21, 2).toString();
  }

  private Desk.Answer compare(Path to, String... more) {
    String[] words = {
      "report",
      "compare",
      "--before",
      before,
      "--after",
      after,
      "--channel",
      "charge_coolant_temp",
      "--to",
      to.toString()
    };
    String[] all = new String[words.length + more.length];
    System.arraycopy(words, 0, all, 0, words.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return desk.type(all);
  }

  @Test
  void formSaysWhatTheCommandSays() throws Exception {
    Path page = folder.resolve("r.html");
    String verdict =
        desk.type(
                "compare", "--before", before, "--after", after, "--channel", "charge_coolant_temp")
            .lines()
            .getFirst();

    Desk.Answer answer = compare(page, "--customer", "M. Fenwick");

    assertThat(answer.status()).as(answer.err()).isZero();
    assertThat(answer.err()).contains("Wrote " + page);
    assertThat(Files.readString(page))
        .contains(verdict, "For M. Fenwick", "before.csv", "after.csv", "15 Jul 2026");
  }

  @Test
  void workshopOfTheLibraryHeadsTheForm() throws Exception {
    Files.createDirectories(library);
    ImageIO.write(
        new BufferedImage(80, 40, BufferedImage.TYPE_INT_RGB),
        "png",
        library.resolve("logo.png").toFile());
    Files.writeString(
        library.resolve("workshop.toml"),
        """
        name = "Kestrel Cooling Works"
        lines = ["Ladder Road 4", "tel. 0555 0147"]
        logo = "logo.png"
        """);
    Path page = folder.resolve("r.html");

    assertThat(compare(page).status()).isZero();
    assertThat(Files.readString(page))
        .contains("Kestrel Cooling Works", "Ladder Road 4", "data:image/png;base64,")
        .contains("name=\"author\" content=\"Kestrel Cooling Works\"");

    assertThat(compare(page, "--workshop", "Another shop").status()).isZero();
    assertThat(Files.readString(page))
        .contains("Another shop")
        .doesNotContain("Kestrel Cooling Works");
  }

  @Test
  void faultyWorkshopFileIsToldAndNothingIsWritten() throws Exception {
    Files.createDirectories(library);
    Files.writeString(library.resolve("workshop.toml"), "nam = \"Kestrel\"\n");
    Path page = Files.writeString(folder.resolve("r.html"), "as it was");

    Desk.Answer answer = compare(page);

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err())
        .contains("workshop.toml: expected one of lines, logo, name, found \"nam\". Correct it");
    assertThat(page).hasContent("as it was");
  }

  @Test
  void tripIsPrintedWithItsTemperaturesUnderTheirLimits() throws Exception {
    String trip =
        desk.type("import", after, "--vehicle", "Van 2", "--note", "<b>pulls</b> & stops").line();
    Path paper = folder.resolve("trip.pdf");

    Desk.Answer answer = desk.type("report", "trip", trip, "--to", paper.toString());

    assertThat(answer.status()).as(answer.err()).isZero();
    try (PDDocument printed = Loader.loadPDF(paper.toFile())) {
      assertThat(new PDFTextStripper().getText(printed))
          .contains("Van 2", trip, "<b>pulls</b> & stops")
          .contains("Charge coolant", "limit 100°", "cautious default, to be checked")
          .contains("came nearest to its limit");
      assertThat(printed.getNumberOfPages()).isLessThanOrEqualTo(2);
    }
  }

  @Test
  void germanFormOfATripIsGerman() throws Exception {
    String trip = desk.type("import", after, "--vehicle", "Van 2").line();
    Path page = folder.resolve("trip.html");

    desk.type("report", "trip", trip, "--to", page.toString(), "--language", "de");

    assertThat(Files.readString(page))
        .contains("lang=\"de\"", "Am nächsten kam ihrer Grenze", "Ladekreis", "Vorsicht");
  }

  @Test
  void tripThatIsNotThereLeavesTheOldFile() throws Exception {
    desk.type("import", after, "--vehicle", "Van 2");
    Path page = Files.writeString(folder.resolve("trip.html"), "as it was");

    Desk.Answer answer = desk.type("report", "trip", "2019", "--to", page.toString());

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).startsWith("Could not");
    assertThat(page).hasContent("as it was");
  }

  @Test
  void wrongUsageEndsWithTwo() {
    assertMisuse("expected what to report: compare or trip, found nothing", "report");
    assertMisuse(
        "expected a name that ends in .pdf or .html, found \"x.doc\"",
        "report",
        "trip",
        "2026",
        "--to",
        "x.doc");
    assertMisuse("expected --to FILE, found nothing", "report", "trip", "2026");
    assertMisuse(
        "no --after TRIP",
        "report",
        "compare",
        "--before",
        before,
        "--channel",
        "charge_coolant_temp",
        "--to",
        "x.pdf");
  }

  private void assertMisuse(String said, String... words) {
    Desk.Answer answer = desk.type(words);
    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains(said);
  }
}
