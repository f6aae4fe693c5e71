package steadypull.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import steadypull.exchange.TableException;
import steadypull.exchange.WholeFile;

/** Writes a form as a file: HTML for a browser or PDF, as the name ends. Any thread. */
public final class ReportFile {
  /** What a name may end in. */
  public static final String ENDINGS = ".pdf or .html";

  private ReportFile() {}

  /** Whether a name tells how to write. */
  public static boolean isKnown(Path file) {
    return isPdf(file) || isPage(file);
  }

  /**
   * Writes a form in place of whatever was there; a fault leaves the old file as it was.
   *
   * @param file its name ends in {@code .pdf} or {@code .html}
   */
  public static void write(ReportPage page, Path file) throws ReportException {
    if (!isKnown(file)) {
      throw new ReportException(
          "Could not write %s: expected a name that ends in %s. Write it so."
              .formatted(shown(file), ENDINGS));
    }
    byte[] content = isPdf(file) ? PdfPrint.of(page) : page.html().getBytes(StandardCharsets.UTF_8);
    try {
      WholeFile.write(file, content);
    } catch (TableException refused) {
      throw new ReportException(String.valueOf(refused.getMessage()), refused);
    }
  }

  private static boolean isPdf(Path file) {
    return endsIn(file, ".pdf");
  }

  private static boolean isPage(Path file) {
    return endsIn(file, ".html");
  }

  private static boolean endsIn(Path file, String ending) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return name.endsWith(ending) && name.length() > ending.length();
  }

  static String shown(Path file) {
    return file.toString().replaceAll("\\p{Cntrl}", "?");
  }
}
