package steadypull.adapter.position;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.sf.marineapi.nmea.sentence.Checksum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Field meanings: NMEA 0183 as described by E. S. Raymond, NMEA Revealed (gpsd project). */
class SentenceReaderTest {

  // Dale DePriest, NMEA data, section GGA: 48 deg 07.038' N, 11 deg 31.000' E, 545.4 m, 8
  // satellites, dilution 0.9.
  @Test
  void fixDataAreRead() {
    assertThat(
            SentenceReader.read(
                "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.FixData data = (Sentence.FixData) sentence;
              assertThat(data.time()).isEqualTo(LocalTime.of(12, 35, 19));
              assertThat(data.quality()).isEqualTo(FixQuality.STANDARD);
              assertPlace(data, 48 + 7.038 / 60, 11 + 31.0 / 60);
              assertThat(data.altitudeMetres()).hasValue(545.4);
              assertThat(data.satellites()).isEqualTo(OptionalInt.of(8));
              assertThat(data.horizontalDilution()).hasValue(0.9);
            });
  }

  // Dale DePriest, NMEA data, section RMC: 22.4 knots on 84.4 deg, 23 March 1994. 1 knot is 1.852
  // km/h exactly (ISO 80000-3).
  @Test
  void recommendedMinimumIsRead() {
    assertThat(
            SentenceReader.read(
                "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.Minimum minimum = (Sentence.Minimum) sentence;
              assertThat(minimum.quality()).isEqualTo(FixQuality.STANDARD);
              assertPlace(minimum, 48 + 7.038 / 60, 11 + 31.0 / 60);
              assertThat(minimum.motion().speedKilometresPerHour().orElseThrow())
                  .isCloseTo(22.4 * 1.852, within(1e-9));
              assertThat(minimum.motion().courseDegrees()).hasValue(84.4);
              assertThat(minimum.date()).contains(LocalDate.of(1994, 3, 23));
            });
  }

  // Peter Bennett, NMEA-0183 sentences (1994 and later): 49 deg 16.45' N, 123 deg 11.12' W.
  @Test
  void westIsNegative() {
    assertThat(
            SentenceReader.read(
                "$GPRMC,225446,A,4916.45,N,12311.12,W,000.5,054.7,191194,020.3,E*68"))
        .hasValueSatisfying(
            sentence ->
                assertPlace((Sentence.Timed) sentence, 49 + 16.45 / 60, -(123 + 11.12 / 60)));
  }

  // The checksum was computed by hand for this check; the field shapes are those of RMC.
  @Test
  void southIsNegativeAndFractionsOfASecondCount() {
    assertThat(read("GNRMC,174512.25,A,3513.21000,S,11428.43800,E,43.20,078.6,150726,,,A"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.Minimum minimum = (Sentence.Minimum) sentence;
              assertThat(minimum.time()).isEqualTo(LocalTime.of(17, 45, 12, 250_000_000));
              assertPlace(minimum, -(35 + 13.21 / 60), 114 + 28.438 / 60);
            });
  }

  // E. S. Raymond, NMEA Revealed, example of VTG: 220.86 deg, 2.550 knots.
  @Test
  void trackIsRead() {
    assertThat(SentenceReader.read("$GPVTG,220.86,T,,M,2.550,N,4.724,K,A*34"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.Motion motion = (Sentence.Motion) sentence;
              assertThat(motion.speedKilometresPerHour().orElseThrow())
                  .isCloseTo(4.724, within(0.002)); // both are rounded to three decimals
              assertThat(motion.courseDegrees()).hasValue(220.86);
            });
  }

  // E. S. Raymond, NMEA Revealed, example of GSA: mode 3 is a fix in three dimensions.
  @Test
  void dimensionsAreRead() {
    assertThat(SentenceReader.read("$GNGSA,A,3,80,71,73,79,69,,,,,,,,1.83,1.09,1.47*17"))
        .contains(new Sentence.Dimensions(true));
    assertThat(read("GNGSA,A,2,80,71,73,,,,,,,,,,1.83,1.09,1.47"))
        .contains(new Sentence.Dimensions(false));
  }

  // NOAA Physical Sciences Laboratory, ATOMIC 2020 cruise, raw navigation record of 2020-01-14
  // 20:00: sentences of a precise receiver, 84 and 82 characters without line ends.
  @ParameterizedTest
  @ValueSource(
      strings = {
        "$GPGGA,195959.00,1541.31258893,N,05130.51204125,W,2,06,1.5,9.2,M,-37.6,M,4.0,0138*7E",
        "$GPRMC,195959.00,A,1541.31258893,N,05130.51204125,W,0.26,147.44,140120,16.9,W,D*0B"
      })
  void sentencesWithMoreDecimalsThanTheStandardHasRoomForAreRead(String line) {
    assertThat(SentenceReader.read(line))
        .hasValueSatisfying(
            sentence -> {
              Sentence.Timed timed = (Sentence.Timed) sentence;
              assertThat(timed.quality()).isEqualTo(FixQuality.DIFFERENTIAL);
              assertPlace(timed, 15 + 41.31258893 / 60, -(51 + 30.51204125 / 60));
            });
    assertThat(SentenceReader.read(line.replace("0.512", "0.612"))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"GP", "GL", "GA", "GB", "BD", "GQ", "GN", "II"})
  void talkerMakesNoDifference(String talker) {
    assertThat(read(talker + "GGA,174512.00,3513.21000,N,11428.43800,W,1,11,0.8,612.4,M,-29.6,M,,"))
        .hasValueSatisfying(
            sentence -> assertThat(((Sentence.FixData) sentence).altitudeMetres()).hasValue(612.4));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // One digit of the altitude is another one.
        "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,745.4,M,46.9,M,,*47",
        "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*48",
        "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,",
        "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*4",
        "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47*47",
        "*47",
        "$*00",
        "$",
        ""
      })
  void sentenceWithoutAGoodChecksumIsRefused(String line) {
    assertThat(SentenceReader.read(line)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "1, A, STANDARD, STANDARD",
    "2, D, DIFFERENTIAL, DIFFERENTIAL",
    "3, P, PRECISE, PRECISE",
    "4, R, PRECISE, PRECISE",
    "5, F, PRECISE, PRECISE",
    "6, E, ESTIMATED, ESTIMATED",
    "0, N, NONE, NONE",
    "7, M, NONE, NONE",
    "8, S, NONE, NONE"
  })
  void qualityIsWhatTheReceiverSays(
      String indicator, String mode, FixQuality ofFixData, FixQuality ofMinimum) {
    assertThat(
            read("GNGGA,174512.00,3513.2,N,11428.4,W," + indicator + ",11,0.8,612.4,M,-29.6,M,,"))
        .hasValueSatisfying(
            sentence -> assertThat(((Sentence.Timed) sentence).quality()).isEqualTo(ofFixData));
    assertThat(read("GNRMC,174512.00,A,3513.2,N,11428.4,W,43.20,078.6,150726,,," + mode))
        .hasValueSatisfying(
            sentence -> assertThat(((Sentence.Timed) sentence).quality()).isEqualTo(ofMinimum));
  }

  @Test
  void warningOfTheReceiverLeavesNoQuality() {
    assertThat(read("GNRMC,174512.00,V,3513.2,N,11428.4,W,43.20,078.6,150726,,,A"))
        .hasValueSatisfying(
            sentence ->
                assertThat(((Sentence.Timed) sentence).quality()).isEqualTo(FixQuality.NONE));
  }

  @Test
  void whatIsNotToldIsEmpty() {
    assertThat(read("GNGGA,174512.00,,,,,0,00,99.99,,,,,,"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.FixData data = (Sentence.FixData) sentence;
              assertThat(data.place()).isEmpty();
              assertThat(data.altitudeMetres()).isEmpty();
              assertThat(data.quality()).isEqualTo(FixQuality.NONE);
            });
    assertThat(read("GNRMC,174512.00,V,,,,,,,,,,N"))
        .hasValueSatisfying(
            sentence -> {
              Sentence.Minimum minimum = (Sentence.Minimum) sentence;
              assertThat(minimum.place()).isEmpty();
              assertThat(minimum.date()).isEmpty();
              assertThat(minimum.motion())
                  .isEqualTo(new Sentence.Motion(OptionalDouble.empty(), OptionalDouble.empty()));
            });
  }

  // Java reads all of these as numbers; a receiver does not write them.
  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "-Infinity", "1e9", "99999", "-5000"})
  void altitudeOutsideTheWorldIsNotTold(String altitude) {
    assertThat(read("GNGGA,174512.00,3513.2,N,11428.4,W,1,11,0.8," + altitude + ",M,-29.6,M,,"))
        .hasValueSatisfying(
            sentence -> assertThat(((Sentence.FixData) sentence).altitudeMetres()).isEmpty());
  }

  @Test
  void altitudeInAnotherUnitIsNotTold() {
    assertThat(read("GNGGA,174512.00,3513.2,N,11428.4,W,1,11,0.8,612.4,F,-29.6,M,,"))
        .hasValueSatisfying(
            sentence -> assertThat(((Sentence.FixData) sentence).altitudeMetres()).isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GNGGA,,3513.2,N,11428.4,W,1,11,0.8,612.4,M,-29.6,M,,",
        "GNGGA,254512.00,3513.2,N,11428.4,W,1,11,0.8,612.4,M,-29.6,M,,",
        "GNGGA,17",
        "GNGLL,3513.2,N,11428.4,W,174512.00,A,A",
        "PUBX,00,1",
        "XXXXX,1"
      })
  void sentenceOfAnotherKindOrWithoutATimeIsLeftAside(String body) {
    assertThat(read(body)).isEmpty();
  }

  private static Optional<Sentence> read(String body) {
    return SentenceReader.read("$" + body + "*" + Checksum.xor(body));
  }

  private static void assertPlace(Sentence.Timed sentence, double latitude, double longitude) {
    // Two centimetres: the fifth decimal of a minute.
    Sentence.Place place = sentence.place().orElseThrow();
    assertThat(place.latitudeDegrees()).isCloseTo(latitude, within(2e-7));
    assertThat(place.longitudeDegrees()).isCloseTo(longitude, within(2e-7));
  }
}
