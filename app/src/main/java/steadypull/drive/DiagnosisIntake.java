package steadypull.drive;

import java.util.HashSet;
import java.util.Set;

/**
 * Lets through what control units tell for the first time in a trip, and changes of their codes:
 * they are asked once a minute and mostly tell the same. One thread.
 */
final class DiagnosisIntake {
  private final Set<String> toldOfVehicle = new HashSet<>();
  private String lastCodes = "";

  boolean isNews(Arrival.Diagnosed told) {
    return switch (told.about()) {
      case CODES -> {
        boolean isNews = !told.detail().equals(lastCodes);
        lastCodes = told.detail();
        yield isNews;
      }
      case VEHICLE -> toldOfVehicle.add(told.detail());
    };
  }
}
