package steadypull.adapter.position;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import net.sf.marineapi.nmea.parser.SentenceFactory;
import net.sf.marineapi.nmea.sentence.Checksum;
import net.sf.marineapi.nmea.sentence.GGASentence;
import net.sf.marineapi.nmea.sentence.GSASentence;
import net.sf.marineapi.nmea.sentence.PositionSentence;
import net.sf.marineapi.nmea.sentence.RMCSentence;
import net.sf.marineapi.nmea.sentence.TimeSentence;
import net.sf.marineapi.nmea.sentence.VTGSentence;
import net.sf.marineapi.nmea.util.DataStatus;
import net.sf.marineapi.nmea.util.FaaMode;
import net.sf.marineapi.nmea.util.GpsFixStatus;
import net.sf.marineapi.nmea.util.Units;

/**
 * Reads GGA, RMC, VTG and GSA of any talker by the marineapi library. The library lets a sentence
 * without a checksum pass and takes any text of a number that Java does, NaN included; both are
 * refused here. Its getters throw where a field is empty, malformed or not there, each in its own
 * way, so that every field is asked for by itself. Stateless.
 */
final class SentenceReader {
  private static final double KILOMETRES_PER_KNOT_HOUR = 1.852; // exact, ISO 80000-3
  private static final int LONGEST_OF_LIBRARY = 80;
  private static final Pattern MANY_DECIMALS = Pattern.compile("(\\.\\d{5})\\d+");
  private static final double LEAST_ALTITUDE_METRES = -1000;
  private static final double GREATEST_ALTITUDE_METRES = 20_000;
  private static final double GREATEST_SPEED = 2000;

  private SentenceReader() {}

  /**
   * Reads a sentence.
   *
   * @param line from the dollar sign to the checksum
   * @return empty if the checksum is missing or wrong, or if the sentence is of another kind
   */
  static Optional<Sentence> read(String line) {
    int star = line.indexOf('*');
    if (star != line.length() - 3 || !Checksum.calculate(line).equals(line.substring(star + 1))) {
      return Optional.empty();
    }
    return asked(() -> SentenceFactory.getInstance().createParser(fitted(line)))
        .flatMap(SentenceReader::of);
  }

  /**
   * Precise receivers write more decimals than the 82 characters of NMEA 0183 have room for, and
   * the library takes no more; five decimals of a minute are two centimetres.
   */
  private static String fitted(String line) {
    return line.length() <= LONGEST_OF_LIBRARY
        ? line
        : Checksum.add(MANY_DECIMALS.matcher(line).replaceAll("$1"));
  }

  private static Optional<Sentence> of(net.sf.marineapi.nmea.sentence.Sentence parsed) {
    return switch (parsed) {
      case GGASentence fixData ->
          time(fixData).map(time -> fixData(time, fixData, quality(fixData)));
      case RMCSentence minimum ->
          time(minimum).map(time -> minimum(time, minimum, quality(minimum)));
      case VTGSentence track -> Optional.of(motion(track::getSpeedKnots, track::getTrueCourse));
      case GSASentence satellites ->
          asked(satellites::getFixStatus)
              .map(status -> new Sentence.Dimensions(status == GpsFixStatus.GPS_3D));
      default -> Optional.empty(); // of another kind: the library knows some seventy
    };
  }

  private static Sentence fixData(LocalTime time, GGASentence parsed, FixQuality quality) {
    return new Sentence.FixData(
        time,
        quality,
        place(parsed),
        altitude(parsed),
        asked(parsed::getSatelliteCount).map(OptionalInt::of).orElse(OptionalInt.empty()),
        number(parsed::getHorizontalDOP, 0, 100));
  }

  private static Sentence minimum(LocalTime time, RMCSentence parsed, FixQuality quality) {
    return new Sentence.Minimum(
        time,
        quality,
        place(parsed),
        motion(parsed::getSpeed, parsed::getCourse),
        asked(parsed::getDate)
            .flatMap(date -> date(date.getYear(), date.getMonth(), date.getDay())));
  }

  private static FixQuality quality(GGASentence parsed) {
    return asked(parsed::getFixQuality)
        .map(
            told ->
                switch (told) {
                  case INVALID, MANUAL, SIMULATED -> FixQuality.NONE;
                  case ESTIMATED -> FixQuality.ESTIMATED;
                  case NORMAL -> FixQuality.STANDARD;
                  case DGPS -> FixQuality.DIFFERENTIAL;
                  case PPS, RTK, FRTK -> FixQuality.PRECISE;
                })
        .orElse(FixQuality.NONE);
  }

  private static FixQuality quality(RMCSentence parsed) {
    boolean isValid = asked(parsed::getStatus).filter(DataStatus.ACTIVE::equals).isPresent();
    // Receivers before NMEA 0183 2.3 tell no mode.
    FaaMode mode = asked(parsed::getMode).orElse(FaaMode.AUTOMATIC);
    return isValid ? quality(mode) : FixQuality.NONE;
  }

  private static FixQuality quality(FaaMode mode) {
    return switch (mode) {
      case NONE, MANUAL, SIMULATED -> FixQuality.NONE;
      case ESTIMATED -> FixQuality.ESTIMATED;
      case AUTOMATIC -> FixQuality.STANDARD;
      case DGPS -> FixQuality.DIFFERENTIAL;
      case PRECISE, RTK_FIXED, RTK_FLOAT -> FixQuality.PRECISE;
    };
  }

  private static Optional<Sentence.Place> place(PositionSentence parsed) {
    return asked(parsed::getPosition)
        .filter(place -> isWithin(place.getLatitude(), -90, 90))
        .filter(place -> isWithin(place.getLongitude(), -180, 180))
        .map(place -> new Sentence.Place(place.getLatitude(), place.getLongitude()));
  }

  private static OptionalDouble altitude(GGASentence parsed) {
    boolean isInMetres = asked(parsed::getAltitudeUnits).filter(Units.METER::equals).isPresent();
    return isInMetres
        ? number(parsed::getAltitude, LEAST_ALTITUDE_METRES, GREATEST_ALTITUDE_METRES)
        : OptionalDouble.empty();
  }

  private static Sentence.Motion motion(DoubleSupplier knots, DoubleSupplier trueCourse) {
    return new Sentence.Motion(
        number(() -> knots.getAsDouble() * KILOMETRES_PER_KNOT_HOUR, 0, GREATEST_SPEED),
        number(trueCourse, 0, 360));
  }

  private static Optional<LocalTime> time(TimeSentence parsed) {
    return asked(parsed::getTime)
        .filter(time -> time.getMilliseconds() < 86_400_000)
        .map(time -> LocalTime.ofNanoOfDay(time.getMilliseconds() * 1_000_000));
  }

  private static Optional<LocalDate> date(int year, int month, int day) {
    try {
      return Optional.of(LocalDate.of(year, month, day));
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }

  private static OptionalDouble number(DoubleSupplier getter, double least, double greatest) {
    return asked(getter::getAsDouble)
        .filter(value -> isWithin(value, least, greatest))
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  private static boolean isWithin(double value, double least, double greatest) {
    return value >= least && value <= greatest;
  }

  private static <T> Optional<T> asked(Supplier<T> getter) {
    try {
      return Optional.of(getter.get());
    } catch (RuntimeException fieldIsNotTold) {
      // The library throws its own and four of Java's: for people they all say the same.
      return Optional.empty();
    }
  }
}
