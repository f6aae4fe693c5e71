package steadypull.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.random.RandomGenerator;

/** Makes ids of trips: the start in ISO 8601 basic form and four letters against collisions. */
final class TripId {
  /** Without letters and digits that are easily taken for one another. */
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final int LETTER_COUNT = 4;
  private static final DateTimeFormatter START =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private TripId() {}

  static String of(Instant start, RandomGenerator random) {
    StringBuilder id = new StringBuilder(START.format(start)).append('-');
    for (int count = 0; count < LETTER_COUNT; count++) {
      id.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return id.toString();
  }
}
