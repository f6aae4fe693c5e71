package steadypull.adapter.position;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What one NMEA 0183 sentence says, as far as it is wanted here. A closed set; immutable. Every
 * value lies in the range that {@link PositionReport} gives, or is empty.
 */
sealed interface Sentence {

  /** Degrees, north and east positive. */
  record Place(double latitudeDegrees, double longitudeDegrees) {}

  /** Says at which moment of the UTC day it holds; sentences of one moment belong together. */
  sealed interface Timed extends Sentence {
    LocalTime time();

    FixQuality quality();

    Optional<Place> place();
  }

  /** GGA. */
  record FixData(
      LocalTime time,
      FixQuality quality,
      Optional<Place> place,
      OptionalDouble altitudeMetres,
      OptionalInt satellites,
      OptionalDouble horizontalDilution)
      implements Timed {}

  /** RMC. */
  record Minimum(
      LocalTime time,
      FixQuality quality,
      Optional<Place> place,
      Motion motion,
      Optional<LocalDate> date)
      implements Timed {}

  /** VTG, and a part of RMC. */
  record Motion(OptionalDouble speedKilometresPerHour, OptionalDouble courseDegrees)
      implements Sentence {}

  /** GSA: whether height is among what is measured. */
  record Dimensions(boolean isHeightMeasured) implements Sentence {}
}
