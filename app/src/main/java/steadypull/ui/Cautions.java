package steadypull.ui;

import java.util.List;

/** What everyone must know before driving with the program. */
final class Cautions {
  private Cautions() {}

  /** The short form for the start screen. */
  static List<String> before(Words words) {
    return List.of(
        words.say("caution.passenger"),
        words.say("caution.hot"),
        words.say("caution.first"),
        words.say("caution.readOnly"));
  }

  /** All of them. */
  static List<String> all(Words words) {
    return List.of(
        words.say("caution.passenger"),
        words.say("caution.hot"),
        words.say("caution.first"),
        words.say("caution.forecast"),
        words.say("caution.dynamometer"),
        words.say("caution.readOnly"));
  }
}
