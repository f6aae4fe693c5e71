package steadypull.adapter.diagnostic;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.regex.Pattern;

/**
 * A diagnostic trouble code as ISO 15031-6 writes it. Immutable; in the order of its text.
 *
 * @param text a letter of P, C, B, U, a digit from 0 to 3 and three hex digits, upper case: {@code
 *     P0299}, {@code U100A}
 */
public record TroubleCode(String text) implements Comparable<TroubleCode> {
  private static final Pattern FORM = Pattern.compile("[PCBU][0-3][0-9A-F]{3}");

  /** SAE J2012: P0, P2, P34 to P39, and C0, B0, U0; from memory. */
  private static final Pattern STANDARD = Pattern.compile("P[02].*|P3[4-9].*|[CBU]0.*");

  private static final String LETTERS = "PCBU";

  public TroubleCode {
    Objects.requireNonNull(text);
    if (!FORM.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "A trouble code is a letter of P, C, B, U, a digit from 0 to 3 and three hex digits, found \"%s\""
              .formatted(text));
    }
  }

  /**
   * Reads two bytes: bits 15 and 14 are the letter, 13 and 12 the first digit, the rest three hex
   * digits (ISO 15031-6).
   *
   * @param high first byte, 0 to 0xFF
   * @param low second byte, 0 to 0xFF
   * @return the code, or empty for 00 00, which stands for none
   */
  public static Optional<TroubleCode> of(int high, int low) {
    int bits = high << 8 | low;
    return bits == 0
        ? Optional.empty()
        : Optional.of(
            new TroubleCode(
                "%c%d%03X"
                    .formatted(LETTERS.charAt(bits >> 14), (bits >> 12) & 0x3, bits & 0xFFF)));
  }

  /** Whether the standard gives the code its meaning; otherwise the vehicle's maker does. */
  public boolean isStandard() {
    return STANDARD.matcher(text).matches();
  }

  /**
   * What the standard means by it, short and general.
   *
   * @param language where there is no translation, English
   * @return a few words without a full stop; empty if this program does not know any
   */
  public Optional<String> meaning(Locale language) {
    ResourceBundle words =
        ResourceBundle.getBundle(
            "steadypull.adapter.diagnostic.TroubleCodeWords",
            language,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    return words.containsKey(text) ? Optional.of(words.getString(text)) : Optional.empty();
  }

  @Override
  public int compareTo(TroubleCode other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
