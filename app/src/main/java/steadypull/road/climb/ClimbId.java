package steadypull.road.climb;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Ids of climbs that are not known yet, from where and in which direction they lie: two libraries
 * that never met mostly give the same one to the same climb. Stateless.
 *
 * <p>The place is where the climb has half its rise, which hardly moves when its ends do, rounded
 * to fiftieths of a degree; the direction is one of four quarters. A climb that lies within metres
 * of where rounding changes, about one in thirty, may get another id elsewhere. The id does not
 * show the place to a reader, but whoever tries all places finds it.
 */
final class ClimbId {
  private static final double CELLS_PER_DEGREE = 50;
  private static final double CELL_DEGREES = 1 / CELLS_PER_DEGREE;
  private static final int QUARTERS = 4;

  /** Climbs of one cell and direction in a library: never nearly so many. */
  private static final int CHOICES = 1000;

  /** 32 letters and digits without those that look alike, so that an id can be typed. */
  private static final String LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";

  private static final int LENGTH = 7;

  private ClimbId() {}

  /** Ids for a climb with places, best first; ids of other cells and directions are others. */
  static Stream<String> choices(Climb climb) {
    Climb.Spot middle = middle(climb);
    String place =
        String.format(
            Locale.ROOT,
            "climb %d %d %d",
            cell(middle.latitudeDegrees()),
            cell(middle.longitudeDegrees()),
            quarter(climb));
    return IntStream.range(0, CHOICES).mapToObj(choice -> letters(place + " " + choice));
  }

  /** Where climbs lie that may have the same ids: the cell, and as much around it. */
  static GeoBounds cell(Climb climb) {
    Climb.Spot middle = middle(climb);
    double south = cell(middle.latitudeDegrees()) * CELL_DEGREES;
    double west = cell(middle.longitudeDegrees()) * CELL_DEGREES;
    return new GeoBounds(
        south - CELL_DEGREES,
        west - CELL_DEGREES,
        south + 2 * CELL_DEGREES,
        west + 2 * CELL_DEGREES);
  }

  private static Climb.Spot middle(Climb climb) {
    return climb.spots().stream()
        .min(Comparator.comparingDouble(spot -> Math.abs(spot.rise() - climb.riseMetres() / 2)))
        .orElseThrow();
  }

  private static long cell(double degrees) {
    return (long) Math.floor(degrees * CELLS_PER_DEGREE);
  }

  private static long quarter(Climb climb) {
    Climb.Spot from = climb.spots().getFirst();
    Climb.Spot to = climb.spots().getLast();
    double north = to.latitudeDegrees() - from.latitudeDegrees();
    double east =
        Math.IEEEremainder(to.longitudeDegrees() - from.longitudeDegrees(), 360)
            * Math.cos(Math.toRadians(from.latitudeDegrees()));
    return Math.floorMod(
        (long) Math.floor(Math.atan2(north, east) / (2 * Math.PI) * QUARTERS), QUARTERS);
  }

  private static String letters(String text) {
    byte[] digest = sha256(text.getBytes(StandardCharsets.UTF_8));
    StringBuilder id = new StringBuilder("c");
    for (int i = 0; i < LENGTH; i++) {
      id.append(LETTERS.charAt(digest[i] & 0x1f));
    }
    return id.toString();
  }

  private static byte[] sha256(byte[] octets) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(octets);
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("Every Java has SHA-256", missing);
    }
  }
}
