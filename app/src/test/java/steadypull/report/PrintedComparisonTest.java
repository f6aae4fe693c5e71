package steadypull.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;

/** The form as it comes out of the printer. */
class PrintedComparisonTest {
  private static final Letterhead HEAD =
      new Letterhead(
          "Kestrel Cooling Works",
          List.of("Ladder Road 4, Sevenstone"),
          Optional.empty(),
          "M. Fenwick",
          new Letterhead.Made("28 Nov 2026", "0.0-test"));

  @TempDir Path folder;

  private static ReportPage page(InventedComparison invented, Letterhead head, Locale locale) {
    return ComparisonReport.of(
        invented.build(), "Van 2", head, locale, new QuantityFormat(locale, UnitSystem.METRIC));
  }

  private PDDocument printed(ReportPage page) throws Exception {
    Path file = folder.resolve("report.pdf");
    ReportFile.write(page, file);
    return Loader.loadPDF(file.toFile());
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void threeRunsASideFitTwoPages(String language) throws Exception {
    Locale locale = Locale.forLanguageTag(language);
    try (PDDocument printed = printed(page(InventedComparison.proven(), HEAD, locale))) {
      assertThat(printed.getNumberOfPages()).isEqualTo(2);
    }
  }

  @Test
  void everyWordCanBeSelectedLabelsOfThePictureToo() throws Exception {
    try (PDDocument printed = printed(page(InventedComparison.proven(), HEAD, Locale.ENGLISH))) {
      String text = new PDFTextStripper().getText(printed).replaceAll("\\s+", " ");

      assertThat(text)
          .contains("Kestrel Cooling Works", "For M. Fenwick")
          .contains("Proven: charge coolant settles 12.0° cooler at the same load")
          .contains("limit 92°: at 35 °C outside 57° above it", "load on", "Cooler by")
          .contains("A dynamometer's figure does not predict the road's")
          .contains("20260512T083000Z-77aa", "left out: began 7.4 degC hotter than the others")
          .contains("Coolant mix: before: 50/50; after: 50/50, fresh");
    }
  }

  @Test
  void verdictStandsFirstAndWhatWasMeasuredBeforeWhatWasCalculated() throws Exception {
    String html = page(InventedComparison.proven(), HEAD, Locale.ENGLISH).html();

    assertThat(html.substring(html.indexOf("<body>")))
        .containsSubsequence(
            "Proven:",
            "<svg",
            ">Measured<",
            "time to derate",
            ">Calculated from the identified model<",
            "conductance UA",
            ">Every run<",
            ">Limits of this claim<",
            ">Method<",
            ">Cautions<");
  }

  // Empty axes and a column of dashes would pass for a result.
  @Test
  void whatCannotBeComparedIsSaidWithoutPicturesAndTables() throws Exception {
    QuantityFormat metric = new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC);
    String html =
        ComparisonReport.of(InventedComparison.untold(), "Van 2", HEAD, Locale.ENGLISH, metric)
            .html();
    String text =
        ComparisonText.of(new ComparisonWords(InventedComparison.untold(), Locale.ENGLISH, metric));

    assertThat(html)
        .contains("Not proven yet", "never held 380 N.m", ">Every run<")
        .doesNotContain("<svg", ">Measured<", "120 s");
    assertThat(text)
        .contains("Not proven yet", "never held 380 N.m", "Every run")
        .doesNotContain("cooler by", "120 s");
  }

  @Test
  void documentSaysWhatItIsAndWhoseInItsMetadata() throws Exception {
    try (PDDocument printed = printed(page(InventedComparison.proven(), HEAD, Locale.ENGLISH))) {
      assertThat(printed.getDocumentInformation().getTitle())
          .isEqualTo("Before and after: Charge coolant, Van 2");
      assertThat(printed.getDocumentInformation().getAuthor()).isEqualTo("Kestrel Cooling Works");
      assertThat(printed.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(printed.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
    }
  }

  @Test
  void typefaceIsPartOfTheFileAndNoOtherIsLookedFor() throws Exception {
    System.setProperty("pdfbox.fontcache", folder.toString());
    try (PDDocument printed = printed(page(InventedComparison.proven(), HEAD, Locale.ENGLISH))) {
      for (PDPage page : printed.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).getName()).contains("B612");
          assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
        }
      }
    }
    assertThat(folder.resolve(".pdfbox.cache")).doesNotExist();
  }

  // The picture as a printer without colours has it: both lines, both fills and the paper differ.
  @Test
  void linesAreVectorsAndFillsDifferInGrey() throws Exception {
    try (PDDocument printed = printed(page(InventedComparison.proven(), HEAD, Locale.ENGLISH))) {
      assertThat(printed.getPage(0).getResources().getXObjectNames())
          .allSatisfy(
              name -> assertThat(printed.getPage(0).getResources().isImageXObject(name)).isFalse());
      BufferedImage grey = new PDFRenderer(printed).renderImageWithDPI(0, 96, ImageType.GRAY);
      long dark = count(grey, 0, 70);
      long middle = count(grey, 160, 200);
      assertThat(dark).isGreaterThan(8_000);
      assertThat(middle).as("the fill of what lasts").isGreaterThan(12_000);
    }
  }

  private static long count(BufferedImage picture, int from, int to) {
    long count = 0;
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        int grey = picture.getRaster().getSample(x, y, 0);
        count += grey >= from && grey < to ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void whatPeopleTypedIsTextAndNothingElse() throws Exception {
    String hostile = "<img src=x onerror=alert(1)> & \"q\" ' \u0000\u0007\uFFFE end";
    Letterhead head = HEAD.ofWorkshop(hostile).forCustomer(hostile);
    ReportPage page =
        ComparisonReport.of(
            InventedComparison.proven().told(hostile, hostile, hostile).build(),
            hostile,
            head,
            Locale.ENGLISH,
            new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC));

    assertThat(page.html()).doesNotContain("<img").contains("&lt;img src=x onerror");
    try (PDDocument printed = printed(page)) {
      assertThat(new PDFTextStripper().getText(printed)).contains("<img src=x onerror=alert(1)>");
    }
  }

  @Test
  void pageOpensNothingFromOutside() {
    String html = page(InventedComparison.proven(), HEAD, Locale.ENGLISH).html();

    assertThat(html.replace("http://www.w3.org/", ""))
        .doesNotContain("http:", "https:", "<link", "<script");
  }

  @Test
  void logoIsPartOfThePageAndShownOnPaper() throws Exception {
    Path logo = folder.resolve("logo.png");
    ImageIO.write(new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB), "png", logo.toFile());
    Letterhead head = HEAD.withLogo(Logo.read(logo));
    ReportPage page = page(InventedComparison.proven(), head, Locale.ENGLISH);

    assertThat(page.html()).contains("src=\"data:image/png;base64,");
    try (PDDocument printed = printed(page)) {
      assertThat(printed.getPage(0).getResources().getXObjectNames())
          .anySatisfy(
              name -> assertThat(printed.getPage(0).getResources().isImageXObject(name)).isTrue());
    }
  }

  @Test
  void whatIsNoPictureIsRefusedAsLogo() throws IOException {
    Path text = Files.writeString(folder.resolve("logo.png"), "<svg onload='x'/>");

    assertThatThrownBy(() -> Logo.read(text))
        .isInstanceOf(ReportException.class)
        .hasMessageContaining("expected a PNG or JPEG picture", "found something else");
    assertThatThrownBy(() -> Logo.read(folder.resolve("none.png")))
        .isInstanceOf(ReportException.class)
        .hasMessageContaining("Name another file");
  }

  @Test
  void fileIsReplacedWholeOrLeftAsItWas() throws Exception {
    ReportPage page = page(InventedComparison.proven(), HEAD, Locale.ENGLISH);
    Path file = Files.writeString(folder.resolve("report.html"), "old");

    ReportFile.write(page, file);
    assertThat(Files.readString(file, StandardCharsets.UTF_8)).isEqualTo(page.html());

    Path database = folder.resolve("library.sqlite.html");
    Files.writeString(database, "not to be lost");
    assertThatThrownBy(() -> ReportFile.write(page, database)).isInstanceOf(ReportException.class);
    assertThat(database).hasContent("not to be lost");
    assertThatThrownBy(() -> ReportFile.write(page, folder.resolve("no/r.pdf")))
        .hasMessageContaining("Could not write", "expected", "found no folder");
    assertThatThrownBy(() -> ReportFile.write(page, folder.resolve("r.doc")))
        .hasMessageContaining("expected a name that ends in .pdf or .html");
    try (var files = Files.list(folder)) {
      assertThat(files)
          .extracting(Path::getFileName)
          .extracting(Path::toString)
          .containsExactlyInAnyOrder("report.html", "library.sqlite.html");
    }
  }
}
