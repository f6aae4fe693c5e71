package steadypull.demo.season;

import java.util.Comparator;

/**
 * Something that happens to the recording at a fixed time. A closed set. Times in s of the trip.
 */
sealed interface Incident {
  Comparator<Incident> BY_TIME = Comparator.comparingDouble(Incident::seconds);

  double seconds();

  /** The adapter is silent until a later time. */
  record LinkLoss(double seconds, double until) implements Incident {}

  /** The user marks something. */
  record Note(double seconds, String text) implements Incident {}

  /** The engine's control unit notices a fault; it tells it when it is asked the next time. */
  record Fault(double seconds, String code, boolean isStored) implements Incident {}

  /** Reads {@code gap@SECONDS-SECONDS}, {@code mark@SECONDS=TEXT}, {@code stored@SECONDS=CODE}. */
  static Incident parse(String text) {
    int at = text.indexOf('@');
    String rest = text.substring(at + 1);
    int equals = rest.indexOf('=');
    String value = rest.substring(equals + 1);
    return switch (text.substring(0, at)) {
      case "gap" -> {
        String[] span = rest.split("-", -1);
        yield new LinkLoss(Double.parseDouble(span[0]), Double.parseDouble(span[1]));
      }
      case "mark" -> new Note(seconds(rest, equals), value);
      case "stored" -> new Fault(seconds(rest, equals), value, true);
      case "pending" -> new Fault(seconds(rest, equals), value, false);
      default -> throw new IllegalArgumentException("No incident reads " + text);
    };
  }

  private static double seconds(String rest, int equals) {
    return Double.parseDouble(rest.substring(0, equals));
  }
}
