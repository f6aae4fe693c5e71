package steadypull.report;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Writes elements that are HTML and XML at once. Every text and every value is escaped here, and
 * characters that XML does not know are left out: what a person typed cannot become an element. One
 * use.
 */
final class Markup {
  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /**
   * Opens an element.
   *
   * @param attributes names and values in turn
   */
  Markup open(String element, String... attributes) {
    begin(element, attributes);
    out.append('>');
    open.push(element);
    return this;
  }

  /** An element without content. */
  Markup empty(String element, String... attributes) {
    begin(element, attributes);
    out.append("/>");
    return this;
  }

  /** Closes the element that was opened last. */
  Markup close() {
    out.append("</").append(open.pop()).append('>');
    return this;
  }

  /** A text. */
  Markup text(String text) {
    escape(text);
    return this;
  }

  /** An element with nothing but a text. */
  Markup with(String element, String text, String... attributes) {
    return open(element, attributes).text(text).close();
  }

  /** What other markup has written. */
  Markup add(Markup other) {
    out.append(other);
    return this;
  }

  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("Elements are still open: " + open);
    }
    return out.toString();
  }

  private void begin(String element, String... attributes) {
    out.append('<').append(element);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      escape(attributes[i + 1]);
      out.append('"');
    }
  }

  private void escape(String text) {
    text.codePoints().filter(Markup::isKnownToXml).forEach(this::escape);
  }

  private void escape(int character) {
    switch (character) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&#39;");
      default -> out.appendCodePoint(character);
    }
  }

  /** Extensible Markup Language (XML) 1.0, fifth edition, production 2 (Char). */
  private static boolean isKnownToXml(int character) {
    return character == '\t'
        || character == '\n'
        || character == '\r'
        || (character >= 0x20 && character <= 0xD7FF)
        || (character >= 0xE000 && character <= 0xFFFD)
        || character >= 0x10000;
  }
}
