package steadypull.adapter.capture;

import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The text of a capture's lines: {@code SECONDS KIND TEXT}, the text escaped. Stateless. */
final class CaptureText {
  /** The first line of every capture. */
  static final String FIRST_LINE = "steadypull-capture 1";

  private static final Pattern LINE =
      Pattern.compile("([0-9]{1,9})\\.([0-9]{6}) ([a-z]+)(?: (.*))?");
  private static final Pattern ESCAPE = Pattern.compile("\\\\(x[0-9A-Fa-f]{2}|.?)");
  private static final long MICROS_PER_SECOND = 1_000_000;

  private CaptureText() {}

  static String line(CaptureEvent event) {
    String stamp =
        String.format(
            Locale.ROOT,
            "%d.%06d %s",
            event.micros() / MICROS_PER_SECOND,
            event.micros() % MICROS_PER_SECOND,
            event.kind().word());
    return event.text().isEmpty() ? stamp : stamp + " " + escaped(event.text());
  }

  /** Reads a line; empty if it is not of the form. */
  static Optional<CaptureEvent> parse(String line) {
    Matcher form = LINE.matcher(line);
    if (!form.matches()) {
      return Optional.empty();
    }
    long micros = Long.parseLong(form.group(1)) * MICROS_PER_SECOND + Long.parseLong(form.group(2));
    String text = Optional.ofNullable(form.group(4)).orElse("");
    return CaptureEvent.Kind.of(form.group(3))
        .flatMap(kind -> plain(text).map(told -> new CaptureEvent(micros, kind, told)));
  }

  /** Everything but printable ASCII becomes {@code \r}, {@code \n}, {@code \t} or {@code \xHH}. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char one = text.charAt(i);
      switch (one) {
        case '\r' -> escaped.append("\\r");
        case '\n' -> escaped.append("\\n");
        case '\t' -> escaped.append("\\t");
        case '\\' -> escaped.append("\\\\");
        default -> escaped.append(one >= ' ' && one <= '~' ? String.valueOf(one) : hex(one));
      }
    }
    return escaped.toString();
  }

  /** Words may hold letters beyond one byte; they are no part of a dialogue. */
  private static String hex(char one) {
    return one > 0xFF ? "?" : "\\x" + HexFormat.of().withUpperCase().toHexDigits((byte) one);
  }

  /** What an escaped text means; empty if an escape is none. */
  static Optional<String> plain(String escaped) {
    StringBuilder plain = new StringBuilder();
    Matcher escape = ESCAPE.matcher(escaped);
    int at = 0;
    while (escape.find()) {
      Optional<String> meant = meaning(escape.group(1));
      if (meant.isEmpty()) {
        return Optional.empty();
      }
      plain.append(escaped, at, escape.start()).append(meant.get());
      at = escape.end();
    }
    return Optional.of(plain.append(escaped, at, escaped.length()).toString());
  }

  private static Optional<String> meaning(String code) {
    if (code.length() == 3) {
      return Optional.of(String.valueOf((char) HexFormat.fromHexDigits(code, 1, 3)));
    }
    return switch (code) {
      case "r" -> Optional.of("\r");
      case "n" -> Optional.of("\n");
      case "t" -> Optional.of("\t");
      case "\\" -> Optional.of("\\");
      default -> Optional.empty();
    };
  }
}
