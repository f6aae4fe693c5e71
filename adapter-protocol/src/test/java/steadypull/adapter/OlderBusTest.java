package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadypull.adapter.ReaderSettings.Pace;

/** Stories of vehicles on the buses before CAN, with their headers and check bytes. */
class OlderBusTest {

  // Check bytes: worked examples of the sheet on transport, computed there (ISO 9141-2 and
  // ISO 14230 sum, SAE J1850 CRC with polynomial 1D).
  @ParameterizedTest
  @CsvSource({
    "ISO_9141, 686AF1010C, D0",
    "ISO_14230_FAST, C233F1010C, F3",
    "J1850_VARIABLE, 686AF1010C, 8B",
    "J1850_VARIABLE, 686AF10100, 17"
  })
  void scriptedVehicleWritesThePublishedCheckBytes(
      OlderVehicle.Bus bus, String bytes, String check) {
    assertThat(bus.check(bytes)).isEqualTo(check);
  }

  @ParameterizedTest
  @EnumSource
  void valuesAndIdentificationAreReadOneParameterAtATime(OlderVehicle.Bus bus) {
    Scene scene = new Scene(bus);

    scene.go(30, Pace.POLITE);

    assertThat(scene.recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(scene.recording.of("01.0C")).allMatch(r -> r.controlUnit().equals("10"));
    assertThat(scene.recording.of("01.05")).isNotEmpty().allMatch(r -> r.value() == 90.0);
    assertThat(scene.recording.of("01.0D"))
        .as("the gearbox at 18 says 81")
        .isNotEmpty()
        .allMatch(r -> r.value() == 80.0);
    assertThat(scene.recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(scene.recording.story())
        .containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(scene.adapter.sent)
        .as("more than one parameter is for CAN only")
        .noneMatch(line -> line.matches("01[0-9A-F]{4,}"))
        .noneMatch(line -> line.startsWith("22"));
  }

  @ParameterizedTest
  @EnumSource
  void aWrongCheckByteGivesNoReading(OlderVehicle.Bus bus) {
    Scene scene = new Scene(bus);
    scene.adapter.wire =
        reply ->
            scene.adapter.sent.getLast().equals("010D") ? reply.replace("410D50", "410D51") : reply;

    scene.go(30, Pace.POLITE);

    assertThat(scene.recording.of("01.0D")).isEmpty();
    assertThat(scene.recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  // P3min of ISO 9141-2 and ISO 14230-2: 55 ms between an answer and the next request.
  @ParameterizedTest
  @EnumSource(
      value = OlderVehicle.Bus.class,
      names = {"ISO_9141", "ISO_14230_SLOW", "ISO_14230_FAST"})
  void aSessionIsGivenItsGapAlsoAtFullPace(OlderVehicle.Bus bus) {
    Scene scene = new Scene(bus);

    scene.go(30, Pace.FULL);

    List<Double> polls = scene.vehicle.requestSeconds();
    assertThat(polls).hasSizeGreaterThan(100);
    for (int i = 5; i < polls.size(); i++) {
      // The answer takes the scripted adapter 30 ms.
      assertThat(polls.get(i) - polls.get(i - 1)).isGreaterThan(0.0849);
    }
  }

  // P3max of both: after 5 s without a request the session is over and takes seconds to begin.
  @ParameterizedTest
  @EnumSource(
      value = OlderVehicle.Bus.class,
      names = {"ISO_9141", "ISO_14230_SLOW", "ISO_14230_FAST"})
  void aSessionIsKeptAliveWhereOnlySlowQuantitiesAreWanted(OlderVehicle.Bus bus) {
    Scene scene = new Scene(bus);
    scene.drive.wanted = Set.of("01.46", "01.33");

    scene.go(60, Pace.POLITE);

    assertThat(scene.vehicle.sessions).isEqualTo(1);
    assertThat(scene.recording.of("01.46")).isNotEmpty();
  }

  // Rows "BUS INIT: ...OK" and "BUS INIT: ...ERROR": the ignition comes on while it is looked for.
  @Test
  void aSessionThatCouldNotBeBegunIsTriedAgain() {
    Scene scene = new Scene(OlderVehicle.Bus.ISO_9141);
    scene.vehicle.isAwake = false;

    scene.drive.go(60, now -> scene.vehicle.isAwake = now > 20);

    assertThat(scene.recording.states)
        .extracting(Recording.Told::state)
        .contains(new LinkState.VehicleSilent("SCRIPTED ADAPTER 1", SilenceCause.NO_ANSWER));
    assertThat(scene.recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  // Headers refused: no check bytes either, and one control unit is assumed.
  @Test
  void anOlderVehicleBehindAnAdapterWithoutSendersIsRead() {
    Scene scene = new Scene(OlderVehicle.Bus.ISO_9141);
    scene.vehicle.hidesSenders = true;
    scene.vehicle.units.remove("18");
    scene.adapter.adapterReplies.put("ATH1", "?");

    scene.go(30, Pace.POLITE);

    assertThat(scene.recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(scene.recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
  }

  /** A drive with such a vehicle. */
  private static final class Scene {
    final OlderVehicle vehicle;
    final ScriptedDrive drive;
    final ScriptedAdapter adapter;
    final Recording recording;

    Scene(OlderVehicle.Bus bus) {
      vehicle = new OlderVehicle(bus);
      drive = new ScriptedDrive(vehicle);
      adapter = drive.adapter;
      recording = drive.recording;
      vehicle.clock = adapter.clock;
      adapter.adapterReplies.put("ATDPN", "A" + bus.protocolNumber);
      adapter.adapterReplies.put("ATDP", "AUTO, " + bus);
    }

    void go(double seconds, Pace pace) {
      drive.go(seconds, pace, now -> {});
    }
  }
}
