package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.adapter.frame.Payload;

class ParameterTableTest {
  private static final double ROUNDING = 0.005;

  /** Fuel trims: the second byte belongs to banks 3 and 4 (SAE J1699-3 cases for 55 to 58). */
  private static final Set<Integer> HAVE_ONE_BYTE_OR_TWO =
      Set.of(0x06, 0x07, 0x08, 0x09, 0x55, 0x56, 0x57, 0x58);

  /** Every parameter of SAE J1979 that this program sets out to read. */
  private static final String ALL_PARAMETERS =
      """
      04 05 06 07 08 09 0B 0C 0D 0F 10 11 13 1D 1F 21 23 2F 31 33 42 43 45 46 49 4A 4B 4C 4D 4E 4F
      50 51 55 56 57 58 5A 5C 5D 5E 61 62 63 64 65 66 67 68 69 6A 6B 6C 6D 6F 70 71 72 73 74 75 76
      77 78 79 7A 7B 7C 7F 83 84 85 87 8B 8E 98 99 9D 9E A4 A6
      """;

  @Test
  void noParameterOfTheListIsMissing() {
    assertThat(ParameterTable.all())
        .extracting(parameter -> "%02X".formatted(parameter.number()))
        .containsExactly(ALL_PARAMETERS.strip().split("\\s+"));
  }

  @Test
  void everyValueHasANameAndAUnitAndItsParameterASource() {
    for (Parameter parameter : ParameterTable.all()) {
      assertThat(parameter.sources()).as("%02X", parameter.number()).isNotEmpty();
      assertThat(parameter.signals())
          .allSatisfy(
              signal -> {
                assertThat(signal.name()).isNotBlank();
                assertThat(signal.unit()).matches("[%\\w./]+");
              });
    }
  }

  /**
   * Worked decodes, computed by hand from the layouts of SAE J1979 appendix B as the conformance
   * cases of SAE J1699-3 (marked T), open signal tables (D) and vehicle makers' diagnostic tables
   * (K) give them. Sensors that byte A marks absent must not appear.
   */
  @ParameterizedTest
  @CsvSource({
    "04 7F, 01.04=49.80", // D
    "06 80, 01.06.1=0", // M: (A - 128) * 100/128
    "07 90 70, 01.07.1=12.5 01.07.2=-12.5", // M: banks 1 and 3
    "08 00, 01.08.1=-100", // M
    "09 FF, 01.09.1=99.22", // M
    "05 82, 01.05=90", // D
    "0B C8, 01.0B=200", // D
    "0C 1F 40, 01.0C=2000", // D
    "0D 50, 01.0D=80", // D
    "0F 4B, 01.0F=35", // D
    "11 FF, 01.11=100", // D
    "10 44 5C, 01.10=175", // D: 0x445C = 17500
    "1F 02 58, 01.1F=600", // D
    "21 00 64, 01.21=100", // D
    "23 27 10, 01.23=100000", // D
    "2F 80, 01.2F=50.20", // D
    "31 04 D2, 01.31=1234", // D
    "33 55, 01.33=85", // D
    "42 36 B0, 01.42=14", // D
    "43 01 FE, 01.43=200", // D
    "45 33, 01.45=20", // D
    "46 4B, 01.46=35", // D
    "49 7F, 01.49=49.80", // D
    "4A 80, 01.4A=50.20", // D
    "4B 00, 01.4B=0", // D
    "4C FF, 01.4C=100", // D
    "4D 00 3C, 01.4D=60", // D, T
    "4E 02 58, 01.4E=600", // D, T
    "4F 02 01 00 40, 01.4F.1=2 01.4F.2=1 01.4F.4=640", // K, T
    "50 80 00 00 00, 01.50=1280", // K, T
    "51 04, 01.51=4", // D, K, T: diesel
    "55 80, 01.55.1=0", // M
    "56 80 C0, 01.56.1=0 01.56.2=50", // M
    "57 40, 01.57.1=-50", // M
    "58 C0, 01.58.1=50", // M
    "5A FF, 01.5A=100", // D, T
    "5C 96, 01.5C=110", // D, T
    "5D 6B 00, 01.5D=4", // T; D's constant gives another figure and is not followed
    "5E 03 20, 01.5E=40", // D, T
    "61 B4, 01.61=55", // D, T
    "62 B4, 01.62=55", // D, T
    "63 04 B0, 01.63=1200", // D, T
    "64 7D 96 AF C8 E1, 01.64.1=0 01.64.2=25 01.64.3=50 01.64.4=75 01.64.5=100", // D, K, T
    "65 1F 5F, 01.65.1=1 01.65.2=1 01.65.3=1 01.65.4=1 01.65.5=5", // D, K, T
    "65 02 00, 01.65.2=0", // D, K, T
    "66 01 15 E0 00 00, 01.66.1=175", // D, K, T
    "67 03 80 6E, 01.67.1=88 01.67.2=70", // D, K, T
    "68 03 43 5A 00 00 00 00, 01.68.1=27 01.68.2=50", // D, K, T
    "69 07 80 40 C0 00 00 00, 01.69.1=50.20 01.69.2=25.10 01.69.3=50", // K, T; D's error differs
    "6A 03 FF 00 00 00, 01.6A.1=100 01.6A.2=0", // K, T
    "6B 01 64 00 00 00, 01.6B.1=60", // D, K, T
    "6B 10 C8 00 00 00, 01.6B.5=760", // D, K, T
    "6C 03 80 7F 00 00, 01.6C.1=50.20 01.6C.2=49.80", // D, K, T
    "6D 07 27 10 26 AC 5A 00 00 00 00 00, 01.6D.1=100000 01.6D.2=99000 01.6D.3=50", // D, K, T
    "6F 04 20 00, 01.6F.3=256", // K; T knows no wide range
    "6F 01 55 00, 01.6F.1=85", // K, T
    "70 07 1F 40 1E 00 00 00 00 00 02, 01.70.1=250 01.70.2=240 01.70.3=2", // D, K, T
    "71 07 80 40 00 00 03, 01.71.1=50.20 01.71.2=25.10 01.71.3=3", // K, T
    "72 03 FF 33 00 00, 01.72.1=100 01.72.2=20", // D, K, T
    "73 01 4E 20 00 00, 01.73.1=200", // K, T
    "74 01 27 10 00 00, 01.74.1=100000", // K; T reads 1 r/min a bit, K is followed
    "75 03 46 C6 00 00 00 00, 01.75.1=30 01.75.2=158", // K, T
    "76 0C 00 00 1E 78 17 0C, 01.76.3=740 01.76.4=550", // K, T
    "77 03 7A 5C 00 00, 01.77.1=82 01.77.2=52", // K, T
    "78 07 17 0C 12 5C 0F A0 00 00, 01.78.1=550 01.78.2=430 01.78.3=360", // K, T
    "79 01 17 0C 00 00 00 00 00 00, 01.79.1=550", // K, T
    "7A 01 FF 9C 00 00 00 00, 01.7A.1=-1", // K, T
    "7B 06 00 00 2A F8 27 10, 01.7B.2=110 01.7B.3=100", // K, T
    "7C 01 1B 58 00 00 00 00 00 00, 01.7C.1=660", // K, T
    "7F 03 00 00 0E 10 00 00 00 3C FF FF FF FF, 01.7F.1=3600 01.7F.2=60", // D, T; K shows minutes
    "84 5A, 01.84=50", // D, T
    "87 01 1E 00 00 00, 01.87.1=240", // K, T
    "8B 01 01 00 00 00 00 00, 01.8B.1=1", // K, T
    "8B 01 00 00 00 00 00 00, 01.8B.1=0", // K, T
    "8B 72 02 80 00 3C 01 F4, 01.8B.2=1 01.8B.5=50.20 01.8B.6=60 01.8B.7=500", // K
    "83 01 01 2C 00 00 00 00 00 00, 01.83.1=300", // K, T
    "85 07 00 64 00 C8 80 00 00 00 00, 01.85.1=0.5 01.85.2=1 01.85.3=50.20", // K, T
    "8E 85, 01.8E=8", // D
    "98 01 17 0C 00 00 00 00 00 00, 01.98.1=550", // K, T
    "9D 00 64 00 C8, 01.9D.1=2 01.9D.2=4", // D
    "9E 03 E8, 01.9E=200", // D
    "A4 03 40 04 4C, 01.A4.1=4 01.A4.2=1.1", // T
    "A6 00 0F 12 06, 01.A6=98765.4" // D
  })
  void workedDecodes(String answer, String expected) {
    Payload payload = Payload.ofHex(answer);
    Parameter parameter = ParameterTable.find(payload.at(0)).orElseThrow();
    Map<String, Double> decoded =
        parameter.decode(payload.from(1), Maxima.none()).stream()
            .collect(Collectors.toMap(value -> value.signal().key(), SignalValue::value));

    Map<String, Double> wanted = new TreeMap<>();
    for (String pair : expected.split(" ", -1)) {
      int equals = pair.indexOf('=');
      wanted.put(pair.substring(0, equals), Double.valueOf(pair.substring(equals + 1)));
    }
    assertThat(decoded.keySet()).isEqualTo(wanted.keySet());
    // Figures above are printed with two decimals.
    wanted.forEach(
        (key, value) -> assertThat(decoded.get(key)).as(key).isCloseTo(value, within(ROUNDING)));
    if (!HAVE_ONE_BYTE_OR_TWO.contains(parameter.number())) {
      assertThat(payload.size() - 1).as("length in the table").isEqualTo(parameter.length());
    }
  }

  // SAE J1979 has no code for "not available": 00 and FF of a one-byte temperature are -40 and 215.
  @ParameterizedTest
  @CsvSource({"05 00", "05 FF", "46 00", "67 03 00 FF", "0D FF", "78 01 FF FF 00 00 00 00 00 00"})
  void valuesOfMissingSensorsGiveNoReading(String answer) {
    Payload payload = Payload.ofHex(answer);

    assertThat(
            ParameterTable.find(payload.at(0)).orElseThrow().decode(payload.from(1), Maxima.none()))
        .isEmpty();
  }

  // SAE J1979: 32 bits of ones and, behind the bits that say so, 16 bits of ones are "no data".
  @ParameterizedTest
  @CsvSource({
    "A6 FF FF FF FF",
    "7F 07 FF FF FF FF FF FF FF FF FF FF FF FF",
    "85 08 00 00 00 00 00 FF FF FF FF",
    "83 01 FF FF 00 00 00 00 00 00",
    "83 11 01 2C 00 00 00 00 00 00", // bit 4: sensor 1 has no data now, whatever stands there
    "A4 02 00 00 00 00", // a ratio of zero is none
    "65 10 00" // recommended gears are 1 to 15
  })
  void valuesThatAreNotAvailableGiveNoReading(String answer) {
    Payload payload = Payload.ofHex(answer);

    assertThat(
            ParameterTable.find(payload.at(0)).orElseThrow().decode(payload.from(1), Maxima.none()))
        .isEmpty();
  }

  @Test
  void sensorThatHasNoDataNowIsStillOffered() {
    Parameter nitrogenOxides = ParameterTable.find(0x83).orElseThrow();

    assertThat(nitrogenOxides.signalsPresent(Payload.ofHex("11FFFF000000000000")))
        .extracting(Signal::key)
        .containsExactly("01.83.1");
  }

  @Test
  void bankThatTheAnswerIsTooShortForIsNotOffered() {
    Parameter trim = ParameterTable.find(0x06).orElseThrow();

    assertThat(trim.signalsPresent(Payload.ofHex("80")))
        .extracting(Signal::key)
        .containsExactly("01.06.1");
    assertThat(trim.signalsPresent(Payload.ofHex("8080"))).hasSize(2);
  }

  // Parameter 74: makers' tables count tens, the cases of SAE J1699-3 single turns a minute. What
  // no turbocharger reaches in tens must be single turns, from then on.
  @Test
  void turboSpeedIsCountedInTensUntilThatCannotBe() {
    Maxima tens = Maxima.none().withTurboSpeed(Payload.ofHex("0127100000"));
    Maxima singles = tens.withTurboSpeed(Payload.ofHex("01EA600000"));

    assertThat(only(0x74, "0127100000", tens)).isEqualTo(100_000);
    assertThat(only(0x74, "01EA600000", singles)).isEqualTo(60_000);
    assertThat(only(0x74, "0127100000", singles.withTurboSpeed(Payload.ofHex("0127100000"))))
        .as("it does not change back")
        .isEqualTo(10_000);
    assertThat(tens.withTurboSpeed(Payload.ofHex("010000FFFF")))
        .as("turbocharger B is not fitted: whatever stands there")
        .isEqualTo(tens);
  }

  @ParameterizedTest
  @CsvSource({
    "51 04, diesel",
    "51 19, bi-fuel diesel",
    "65 02 02, drive or reverse",
    "65 04 00, out of gear",
    "70 04 00 00 00 00 00 00 00 00 02, closed loop",
    "71 20 00 00 00 00 0C, 'fault, not reliable'",
    "8B 02 02 00 00 00 00 00, active"
  })
  void countedValuesAreSaidInWords(String answer, String words) {
    Payload payload = Payload.ofHex(answer);
    SignalValue value =
        ParameterTable.find(payload.at(0))
            .orElseThrow()
            .decode(payload.from(1), Maxima.none())
            .getFirst();

    assertThat(ValueWords.of(value)).contains(words);
  }

  @Test
  void quantitiesAndReservedNumbersHaveNoWords() {
    assertThat(ValueWords.of(new SignalValue(new Signal("01.05", "coolant", "degC"), 4))).isEmpty();
    assertThat(ValueWords.of(new SignalValue(new Signal("01.51", "fuel", "1"), 99))).isEmpty();
    assertThat(ValueWords.of(new SignalValue(new Signal("01.70.3", "status", "1"), 0))).isEmpty();
  }

  @Test
  void dataThatEndEarlyGiveTheValuesThatAreThere() {
    Parameter intake = ParameterTable.find(0x68).orElseThrow();

    // Some lists print three bytes for 68: the length is learnt from the vehicle.
    assertThat(intake.decode(Payload.ofHex("3F435A"), Maxima.none()))
        .extracting(value -> value.signal().key())
        .containsExactly("01.68.1", "01.68.2");
    assertThat(intake.decode(Payload.ofHex(""), Maxima.none())).isEmpty();
  }

  // SAE J1699-3 cases for 4F and 50: 0B = A * (4F.D * 10) / 255, 10 = AB * (50.A * 10) / 65535.
  @Test
  void declaredFullScalesReplaceTheUsualScaling() {
    Maxima maxima =
        Maxima.none()
            .withManifold(Payload.ofHex("00000040"))
            .withAirFlow(Payload.ofHex("80000000"));

    assertThat(only(0x0B, "64", maxima)).isCloseTo(251.0, within(0.05));
    assertThat(only(0x10, "FFFF", maxima)).isCloseTo(1280.0, within(0.001));
  }

  @Test
  void undeclaredFullScaleIsZeroAndChangesNothing() {
    Maxima maxima =
        Maxima.none()
            .withManifold(Payload.ofHex("FFFFFF00"))
            .withAirFlow(Payload.ofHex("00FFFFFF"));

    assertThat(only(0x0B, "64", maxima)).isEqualTo(100.0);
    assertThat(only(0x10, "445C", maxima)).isCloseTo(175.0, within(1e-9));
  }

  private static double only(int number, String data, Maxima maxima) {
    List<SignalValue> values =
        ParameterTable.find(number).orElseThrow().decode(Payload.ofHex(data), maxima);
    assertThat(values).hasSize(1);
    return values.getFirst().value();
  }

  @Test
  void everyKeyIsUniqueAndEveryValueFitsItsParameter() {
    Set<String> keys = new HashSet<>();
    for (Parameter parameter : ParameterTable.all()) {
      for (Parameter.Value value : parameter.values()) {
        assertThat(keys.add(value.signal().key())).as(value.signal().key()).isTrue();
        assertThat(value.field().firstBit() + value.field().bitLength())
            .as(value.signal().key())
            .isLessThanOrEqualTo(parameter.length() * 8);
        assertThat(value.lowest()).as(value.signal().key()).isLessThan(value.highest());
      }
    }
  }

  @Test
  void everyParameterBehindAChannelIsThereInTheChannelsUnit() {
    Map<String, String> units =
        Map.ofEntries(
            Map.entry("01.04", "%"),
            Map.entry("01.05", "degC"),
            Map.entry("01.0B", "kPa"),
            Map.entry("01.0C", "r/min"),
            Map.entry("01.0D", "km/h"),
            Map.entry("01.0F", "degC"),
            Map.entry("01.10", "g/s"),
            Map.entry("01.33", "kPa"),
            Map.entry("01.42", "V"),
            Map.entry("01.46", "degC"),
            Map.entry("01.49", "%"),
            Map.entry("01.5A", "%"),
            Map.entry("01.5C", "degC"),
            Map.entry("01.5E", "L/h"),
            Map.entry("01.61", "%"),
            Map.entry("01.62", "%"),
            Map.entry("01.63", "N.m"),
            Map.entry("01.66.2", "g/s"),
            Map.entry("01.67.2", "degC"),
            Map.entry("01.68.6", "degC"),
            Map.entry("01.75.4", "degC"),
            Map.entry("01.77.4", "degC"),
            Map.entry("01.78.4", "degC"),
            Map.entry("01.79.4", "degC"),
            Map.entry("01.87.2", "kPa"),
            Map.entry("01.8B.1", "1"),
            Map.entry("01.A4.1", "1"));
    Map<String, String> table =
        ParameterTable.all().stream()
            .flatMap(parameter -> parameter.signals().stream())
            .collect(Collectors.toMap(Signal::key, Signal::unit));

    assertThat(table).containsAllEntriesOf(units);
  }

  @Test
  void vehiclesOwnSignalIsCutOutOfTheBitsAndScaled() {
    DefinedSignal signed =
        new DefinedSignal(0x1234, "7E0", "signed", 4, 12, true, 0.5, 1, "kPa", -500, 500);

    // Low twelve bits of F FF E: -2 * 0.5 + 1 = 0.
    assertThat(signed.decode(Payload.ofHex("FFFE"))).map(SignalValue::value).contains(0.0);
    assertThat(signed.decode(Payload.ofHex("F7FF"))).as("1024.5 is out of range").isEmpty();
    assertThat(signed.decode(Payload.ofHex("FF"))).as("too short").isEmpty();
  }
}
