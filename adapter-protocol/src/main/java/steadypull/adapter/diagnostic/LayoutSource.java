package steadypull.adapter.diagnostic;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;

/** Where a parameter's layout was read; the body of SAE J1979 itself is not open. */
public enum LayoutSource {
  /** An open, machine-readable signal table for SAE J1979. */
  OPEN_SIGNAL_TABLE('D'),
  /** Vehicle makers' published diagnostic description tables. */
  MAKERS_TABLES('K'),
  /** The published conformance cases of SAE J1699-3. */
  CONFORMANCE_CASES('T'),
  /** From memory of SAE J1979; not looked up. */
  MEMORY('M');

  private final char letter;

  LayoutSource(char letter) {
    this.letter = letter;
  }

  /** The sources named by letters; at least one. */
  static Set<LayoutSource> ofLetters(String letters) {
    return letters
        .chars()
        .mapToObj(letter -> ofLetter((char) letter))
        .collect(Collectors.toUnmodifiableSet());
  }

  private static LayoutSource ofLetter(char letter) {
    return Arrays.stream(values())
        .filter(source -> source.letter == letter)
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("A source is D, K, T or M, found " + letter));
  }
}
