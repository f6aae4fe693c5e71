package steadypull.drive;

import java.util.HashMap;
import java.util.Map;

/**
 * Lets through what control units tell for the first time in a trip, and changes of it: they are
 * asked once a minute and mostly tell the same. One thread.
 */
final class DiagnosisIntake {
  private final Map<String, String> lastBySubject = new HashMap<>();

  boolean isNews(Arrival.Diagnosed told) {
    return !told.detail().equals(lastBySubject.put(told.subject(), told.detail()));
  }
}
