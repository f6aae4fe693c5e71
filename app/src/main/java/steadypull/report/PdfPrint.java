package steadypull.report;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * Prints a page as tagged PDF (PDF/UA). What is not part of the page is not fetched, nor are the
 * system's typefaces looked through: such a file has none but its own. One at a time, any thread.
 */
final class PdfPrint {
  private PdfPrint() {}

  /**
   * Prints.
   *
   * @throws ReportException if the page cannot be printed
   */
  static synchronized byte[] of(ReportPage page) throws ReportException {
    XRLog.setLoggingEnabled(false);
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    try {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.usePdfUaAccessibility(true);
      builder.useSVGDrawer(new BatikSVGDrawer());
      builder.useUriResolver(PdfPrint::ownParts);
      builder.withProducer("Steadypull");
      builder.withHtmlContent(page.html(), null);
      builder.toStream(printed);
      builder.run();
    } catch (IOException | RuntimeException failed) {
      throw new ReportException(
          "Could not print \"%s\" as PDF: expected a page that the printer takes, found one that it refuses (%s). Write it as .html and print it from a browser."
              .formatted(page.title(), failed.getMessage()),
          failed);
    }
    return printed.toByteArray();
  }

  /** Only what lies in the page itself. */
  private static @Nullable String ownParts(@Nullable String base, String address) {
    return address.startsWith("data:") || address.startsWith("#") ? address : null;
  }
}
