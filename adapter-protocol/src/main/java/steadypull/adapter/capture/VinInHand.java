package steadypull.adapter.capture;

import java.util.Arrays;

/** A number that is being read and masked, character by character. One thread. */
final class VinInHand {
  private static final int BEYOND = 99;

  private final KnownVins known;
  private final char[] characters = new char[KnownVins.LENGTH];
  private int next;

  /**
   * Begins.
   *
   * @param first place of the next character within the number, from 0
   */
  VinInHand(KnownVins known, int first) {
    this.known = known;
    this.next = first;
    Arrays.fill(characters, ' ');
  }

  /** Characters of which nobody knows where in the number they stand. */
  static VinInHand unnumbered(KnownVins known) {
    return new VinInHand(known, BEYOND);
  }

  /** Masks those bytes of a line that are characters of a number; the others are filler. */
  void mask(DataLine line, int from, int to) {
    for (int i = from; i < to; i++) {
      if (isCharacter(line.octet(i))) {
        take((char) line.octet(i));
        line.set(i, KnownVins.filler(next));
        next++;
      }
    }
  }

  private void take(char character) {
    if (next < characters.length) {
      characters[next] = character;
    }
    if (next == characters.length - 1) {
      known.learn(new String(characters));
    }
  }

  /** ISO 3779 has capital letters and digits; three letters are left out, here they count too. */
  private static boolean isCharacter(int octet) {
    return (octet >= '0' && octet <= '9') || (octet >= 'A' && octet <= 'Z');
  }
}
