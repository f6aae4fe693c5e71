package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** Trouble codes and what goes with them, from the vehicle's memory to the reader's listener. */
@Timeout(300)
class TroubleCodesOnTheBenchTest {
  private static final String DRIVE = "demo:long-hot-grade?speed=max&seed=9&start=300";

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5, 6, 9})
  void codeIsToldFromTheRoundAfterItWasStored(int protocol) {
    ReaderLog log =
        ReaderLog.read(
            DRIVE + "&protocol=" + protocol + "&codes=P0299@90,P0741@20&pending=P0217@30", 200);

    assertThat(texts(log.codes.getFirst(), CodeStatus.STORED)).isEmpty();
    TroubleCodeReport last = log.codes.getLast();
    assertThat(texts(last, CodeStatus.STORED)).containsExactlyInAnyOrder("P0299", "P0741");
    assertThat(texts(last, CodeStatus.PENDING)).contains("P0217");
  }

  /** Without a count byte three codes fit a message: four take two messages there. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
  void everyStoredCodeIsToldOnEveryBus(int protocol) {
    ReaderLog log =
        ReaderLog.read(
            DRIVE + "&protocol=" + protocol + "&codes=P0299@0,P0133@0,U0100@0,P2263@0", 60);

    assertThat(texts(log.codes.getFirst(), CodeStatus.STORED))
        .containsExactlyInAnyOrder("P0133", "P0299", "P2263", "U0100");
  }

  @Test
  void permanentCodesAreAskedForOnCanOnly() {
    ReaderLog can = ReaderLog.read(DRIVE + "&protocol=6", 30);
    ReaderLog older = ReaderLog.read(DRIVE + "&protocol=3", 60);

    assertThat(can.codes.getFirst().answeredBy()).containsKey(CodeStatus.PERMANENT);
    assertThat(older.codes.getFirst().answeredBy())
        .containsKey(CodeStatus.STORED)
        .doesNotContainKey(CodeStatus.PERMANENT);
  }

  private static List<String> texts(TroubleCodeReport report, CodeStatus status) {
    return report.found().stream()
        .filter(found -> found.status() == status)
        .map(found -> found.code().text())
        .toList();
  }

  /** Speed and coolant at 90 s, to a step of the sensor and its noise. */
  @Test
  void freezeFrameHoldsWhatTheSensorsSaidWhenTheCodeWasStored() {
    ReaderLog log = ReaderLog.read(DRIVE + "&codes=P0299@90", 200);
    Drive drive = new Drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 9);
    drive.advanceTo(390);

    FreezeFrame frame = log.freezeFrames.getLast();
    assertThat(frame.code().text()).isEqualTo("P0299");
    Map<String, Double> values =
        frame.values().stream()
            .collect(Collectors.toMap(each -> each.signal().key(), each -> each.value()));
    assertThat(values.get("01.0D")).isCloseTo(drive.read(Sensor.VEHICLE_SPEED), within(1.5));
    assertThat(values.get("01.05")).isCloseTo(drive.read(Sensor.ENGINE_COOLANT), within(1.5));
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 6, 7})
  void controlUnitsSayWhatTheyAreCalledOnEveryBus(int protocol) {
    ReaderLog log = ReaderLog.read(DRIVE + "&protocol=" + protocol, 100);

    assertThat(log.identities)
        .extracting(ControlUnitIdentity::name)
        .anyMatch(name -> name.contains("EngineControl"))
        .anyMatch(name -> name.contains("TransmisCtrl"));
    assertThat(log.identities)
        .anyMatch(
            identity ->
                identity.calibrations().equals(List.of("WTL2-ENG-0042", "BOOST-07"))
                    && identity.verificationNumbers().equals(List.of("1D2C3B4A", "05060708")));
  }
}
