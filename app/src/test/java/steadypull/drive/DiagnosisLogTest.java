package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.Signal;
import steadypull.adapter.diagnostic.SignalValue;
import steadypull.adapter.diagnostic.TroubleCode;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.adapter.diagnostic.TroubleCodeReport.Found;
import steadypull.store.TripEvent;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.TroubleCodes.Code;

/** What is known of codes after one report and another, each kept as a text in between. */
class DiagnosisLogTest {
  private static final Signal COOLANT = new Signal("01.05", "engine coolant temperature", "degC");

  private final DiagnosisLog log = new DiagnosisLog(Locale.ENGLISH);
  private int second;

  @Test
  void codesOfTheFirstReportWereThereBefore() {
    tell(Set.of("7E8"), found("7E8", "P0299"));

    Code code = stored().getFirst();
    assertThat(code.line()).isEqualTo("P0299, turbocharger A underboost");
    assertThat(code.controlUnit()).isEqualTo("7E8");
    assertThat(code.cameUpMicros()).isEmpty();
  }

  @Test
  void codesOfALaterReportAreNew() {
    tell(Set.of("7E8"));
    tell(Set.of("7E8"), found("7E8", "P0299"));

    assertThat(stored().getFirst().cameUpMicros()).isEqualTo(OptionalLong.of(120_000_000));
  }

  @Test
  void aCodeStaysAsOldAsItIs() {
    tell(Set.of("7E8"));
    tell(Set.of("7E8"), found("7E8", "P0299"));
    tell(Set.of("7E8"));
    assertThat(stored()).isEmpty();
    tell(Set.of("7E8"), found("7E8", "P0299"), found("7E8", "P0420"));

    assertThat(stored())
        .extracting(Code::text, Code::cameUpMicros)
        .containsExactly(
            tuple("P0420", OptionalLong.of(240_000_000)),
            tuple("P0299", OptionalLong.of(120_000_000)));
  }

  // While a bus wakes up one control unit may be late: what it then tells is no news.
  @Test
  void aControlUnitThatIsHeardLateHasItsCodesFromBefore() {
    tell(Set.of("7E8"));
    tell(Set.of("7E8", "7E9"), found("7E9", "P0218"));

    assertThat(stored().getFirst().cameUpMicros()).isEmpty();
  }

  @Test
  void aControlUnitThatKeepsSilentForARoundLosesNothing() {
    tell(Set.of("7E8", "7E9"), found("7E9", "P0218"));
    tell(Set.of("7E8"));

    assertThat(stored()).extracting(Code::text).containsExactly("P0218");
  }

  @Test
  void noCodesAndNoAnswerAreNotTheSame() {
    assertThat(log.codes().isStoredKnown()).isFalse();
    tell(Set.of("7E8"));
    assertThat(log.codes().isStoredKnown()).isTrue();
    assertThat(log.codes().told()).containsExactly(TroubleCodes.Status.STORED);
  }

  @Test
  void whatWasMeasuredAndWhoMeasuredItIsKept() {
    take(
        TripEvent.Kind.VEHICLE,
        DiagnosisText.of(
            new FreezeFrame(
                "7E8",
                new TroubleCode("P0299"),
                List.of(
                    new SignalValue(COOLANT, 92),
                    new SignalValue(new Signal("01.51", "fuel type in use", "1"), 4)))));
    take(
        TripEvent.Kind.VEHICLE,
        DiagnosisText.of(
            new ControlUnitIdentity("7E8", "ECM -EngineControl", List.of("CA1"), List.of("12AB"))));

    assertThat(log.diagnosis().frames())
        .containsExactly(
            new Diagnosis.Frame(
                "7E8",
                "P0299",
                List.of(
                    new Diagnosis.Value(COOLANT.name(), 92, "degC", Optional.empty()),
                    new Diagnosis.Value("fuel type in use", 4, "1", Optional.of("diesel")))));
    assertThat(log.diagnosis().controlUnits())
        .containsExactly(new Diagnosis.ControlUnit("7E8", "ECM -EngineControl", List.of("CA1")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "learnt",
        "[]",
        "{\"status\":\"stored\",\"told_by\":7,\"codes\":{}}",
        "{\"status\":\"stored\",\"told_by\":[\"7E8\"],\"codes\":[{\"code\":\"X\",\"control_unit\":\"7E8\"}]}"
      })
  void anEventOfAnotherProgramTellsNothing(String detail) {
    take(TripEvent.Kind.CODES, detail);

    assertThat(log.codes().stored()).isEmpty();
  }

  private void tell(Set<String> units, Found... codes) {
    Map<CodeStatus, Set<String>> answered = new EnumMap<>(CodeStatus.class);
    answered.put(CodeStatus.STORED, units);
    second += 60;
    DiagnosisText.of(new TroubleCodeReport(answered, List.of(codes)))
        .values()
        .forEach(detail -> take(TripEvent.Kind.CODES, detail));
  }

  private void take(TripEvent.Kind kind, String detail) {
    log.take(new TripEvent(second * 1_000_000L, kind, detail));
  }

  private List<Code> stored() {
    return log.codes().stored();
  }

  private static Found found(String unit, String code) {
    return new Found(unit, new TroubleCode(code), CodeStatus.STORED);
  }
}
