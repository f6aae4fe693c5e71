package steadypull.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Objects;

/**
 * One page of HTML that is complete in itself: style, typeface and pictures are part of it.
 * Immutable.
 *
 * @param title of the document
 * @param html the whole text, XML at the same time
 */
public record ReportPage(String title, String html) {
  private static final String FONTS = "/steadypull/ui/fonts/B612-";

  /**
   * Puts a body into its page.
   *
   * @param subject what kind of document it is
   */
  static ReportPage of(
      ReportWords words, Letterhead head, String title, String subject, Markup body) {
    String language = words.locale().getLanguage().isEmpty() ? "en" : words.locale().getLanguage();
    Markup page = new Markup();
    page.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", language)
        .open("head")
        .empty("meta", "charset", "utf-8")
        .with("title", title)
        .empty("meta", "name", "author", "content", author(head))
        .empty("meta", "name", "subject", "content", subject)
        .empty("meta", "name", "description", "content", subject)
        .with("style", style(words))
        .close()
        .open("body")
        .add(body)
        .close()
        .close();
    return new ReportPage(title, "<!DOCTYPE html>\n" + page + "\n");
  }

  private static String author(Letterhead head) {
    return head.workshop().isEmpty() ? "Steadypull" : head.workshop();
  }

  private static String style(ReportWords words) {
    return face("Regular", "normal")
        + face("Bold", "bold")
        + new String(bytes("report.css"), StandardCharsets.UTF_8)
            .replace("PAGE_WORD", words.say("page"));
  }

  private static String face(String cut, String weight) {
    return "@font-face { font-family: B612; font-weight: %s; font-style: normal; src: url(data:font/ttf;base64,%s); }\n"
        .formatted(weight, Base64.getEncoder().encodeToString(bytes(FONTS + cut + ".ttf")));
  }

  private static byte[] bytes(String resource) {
    try (InputStream stream =
        Objects.requireNonNull(ReportPage.class.getResourceAsStream(resource), resource)) {
      return stream.readAllBytes();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(
          "A part of the program could not be read: " + resource + "; install it again",
          unreadable);
    }
  }
}
