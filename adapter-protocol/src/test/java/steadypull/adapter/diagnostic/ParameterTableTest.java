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

  /**
   * Worked decodes, computed by hand from the layouts of SAE J1979 appendix B as the conformance
   * cases of SAE J1699-3 (marked T), open signal tables (D) and vehicle makers' diagnostic tables
   * (K) give them. Sensors that byte A marks absent must not appear.
   */
  @ParameterizedTest
  @CsvSource({
    "04 7F, 01.04=49.80", // D
    "05 82, 01.05=90", // D
    "0B C8, 01.0B=200", // D
    "0C 1F 40, 01.0C=2000", // D
    "0D 50, 01.0D=80", // D
    "0F 4B, 01.0F=35", // D
    "10 44 5C, 01.10=175", // D: 0x445C = 17500
    "1F 02 58, 01.1F=600", // D
    "33 55, 01.33=85", // D
    "42 36 B0, 01.42=14", // D
    "46 4B, 01.46=35", // D
    "49 7F, 01.49=49.80", // D
    "5A FF, 01.5A=100", // D, T
    "5C 96, 01.5C=110", // D, T
    "5D 6B 00, 01.5D=4", // T; D's constant gives another figure and is not followed
    "5E 03 20, 01.5E=40", // D, T
    "61 B4, 01.61=55", // D, T
    "62 B4, 01.62=55", // D, T
    "63 04 B0, 01.63=1200", // D, T
    "66 01 15 E0 00 00, 01.66.1=175", // D, K, T
    "67 03 80 6E, 01.67.1=88 01.67.2=70", // D, K, T
    "68 03 43 5A 00 00 00 00, 01.68.1=27 01.68.2=50", // D, K, T
    "6B 10 C8 00 00 00, 01.6B.5=760", // D, K, T
    "6F 01 55 00, 01.6F.1=85", // K, T
    "70 07 1F 40 1E 00 00 00 00 00 02, 01.70.1=250 01.70.2=240 01.70.3=2", // D, K, T
    "73 01 4E 20 00 00, 01.73.1=200", // K, T
    "74 01 27 10 00 00, 01.74.1=100000", // K; T reads 1 r/min a bit, K is followed
    "75 03 46 C6 00 00 00 00, 01.75.1=30 01.75.2=158", // K, T
    "77 03 7A 5C 00 00, 01.77.1=82 01.77.2=52", // K, T
    "78 07 17 0C 12 5C 0F A0 00 00, 01.78.1=550 01.78.2=430 01.78.3=360", // K, T
    "79 01 17 0C 00 00 00 00 00 00, 01.79.1=550", // K, T
    "7A 01 FF 9C 00 00 00 00, 01.7A.1=-1", // K, T
    "87 01 1E 00 00 00, 01.87.1=240", // K, T
    "8B 01 01 00 00 00 00 00, 01.8B.1=1", // K, T
    "8B 01 00 00 00 00 00 00, 01.8B.1=0", // K, T
    "8E 85, 01.8E=8", // D
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
    assertThat(payload.size() - 1).as("length in the table").isEqualTo(parameter.length());
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
