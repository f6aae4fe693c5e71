package steadypull.exchange;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How the bytes of a table are its text.
 *
 * <p>{@link #UTF_8_TWICE}: UTF-8 that some program has taken for a Windows or Latin text and
 * encoded again, so that {@code °} has become {@code Â°}. Only the header is repaired; below it
 * stand numbers.
 */
enum TextEncoding {
  UTF_8("utf-8", StandardCharsets.UTF_8),
  UTF_8_TWICE("utf-8-twice", StandardCharsets.UTF_8),
  UTF_16("utf-16", StandardCharsets.UTF_16),
  WINDOWS_1252("windows-1252", Charset.forName("windows-1252")),
  ISO_8859_1("iso-8859-1", StandardCharsets.ISO_8859_1);

  private final String word;
  private final Charset charset;

  TextEncoding(String word, Charset charset) {
    this.word = word;
    this.charset = charset;
  }

  /** The word in a mapping. */
  String word() {
    return word;
  }

  Charset charset() {
    return charset;
  }

  /** The encoding of that word, in whatever case, with dashes or without. */
  static Optional<TextEncoding> of(String word) {
    return Stream.of(values()).filter(each -> plain(each.word).equals(plain(word))).findFirst();
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
  }

  /** A header cell as it was meant; one that was not encoded twice stays as it is. */
  String repaired(String cell) {
    if (this != UTF_8_TWICE) {
      return cell;
    }
    return once(cell, WINDOWS_1252.charset).or(() -> once(cell, ISO_8859_1.charset)).orElse(cell);
  }

  /** Whether text looks as if it had been encoded twice. */
  static boolean looksTwice(String text) {
    return !UTF_8_TWICE.repaired(text).equals(text);
  }

  private static Optional<String> once(String cell, Charset mistaken) {
    try {
      ByteBuffer bytes = mistaken.newEncoder().encode(CharBuffer.wrap(cell));
      return Optional.of(StandardCharsets.UTF_8.newDecoder().decode(bytes).toString());
    } catch (CharacterCodingException notTwice) {
      return Optional.empty();
    }
  }
}
