package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceLine;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/** Trouble codes from the vehicle's bytes to the trip, the advice and its replay. */
@Execution(ExecutionMode.CONCURRENT)
class TroubleCodesInTripTest {
  private static final String UNDERBOOST_STORED =
      """
      {"status":"stored","told_by":["7E8"],"codes":[{"code":"P0299","control_unit":"7E8"}]}
      """;
  private static final String NONE_STORED =
      """
      {"status":"stored","told_by":["7E8"],"codes":[]}
      """;

  @TempDir private Path folder;

  private final Heard heard = new Heard();
  private final DrivePipeline pipeline =
      new DrivePipeline(
          DemoDrives.ENGLISH.setup(Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR), false),
          DemoDrives.START,
          heard);
  private int second;

  @Test
  void aCodeThatTheBenchStoresReachesTripAdviceAndReplay() throws Exception {
    Heard live = new Heard();
    Heard replayed = new Heard();
    List<TripEntry> kept = new ArrayList<>();
    try (DemoDrives demo = new DemoDrives(folder)) {
      String trip =
          demo.drive("demo:cool-day?speed=max&codes=P0299@70", 200, live).tripId().orElseThrow();
      TripSummary summary = demo.library().find(trip);
      demo.library().replay(trip, kept::add);
      new Replay(DemoDrives.ENGLISH.setup(demo.library().vehicleOf(trip), true), replayed)
          .run(demo.library(), summary);
    }

    AdviceEvent notice = raised(live, "new-trouble-code").orElseThrow();
    assertThat(notice.timeMicros()).isBetween(70_000_000L, 135_000_000L);
    assertThat(notice.text()).startsWith("P0299 stored. Turbocharger A underboost.");
    assertThat(live.last().diagnosis().codes().stored())
        .extracting(TroubleCodes.Code::text)
        .containsExactly("P0299");
    assertThat(live.last().diagnosis().frames())
        .singleElement()
        .satisfies(frame -> assertThat(frame.values()).isNotEmpty());
    assertThat(kept).isEqualTo(live.entries);
    assertThat(replayed.entries).isEqualTo(live.entries);
    assertThat(replayed.adviceLines()).isEqualTo(live.adviceLines());
    assertThat(replayed.last().diagnosis()).isEqualTo(live.last().diagnosis());
  }

  @Test
  void aVehicleWithoutCodesIsKnownToHaveNone() throws Exception {
    Heard live = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max", 40, live);
    }

    assertThat(live.last().diagnosis().codes().isStoredKnown()).isTrue();
    assertThat(live.last().diagnosis().codes().stored()).isEmpty();
    assertThat(raised(live, "new-trouble-code")).isEmpty();
  }

  // Limp mode: nothing is hot, a fault is stored, power is down. Easing is not advised.
  @Test
  void limpModeIsLimitedPowerAndNamesItsCode() {
    codes(NONE_STORED);
    drive(60, 90, 90, 60);
    codes(UNDERBOOST_STORED);
    drive(30, 90, 65, 60);

    AdviceEvent limited = heard.first(AdviceEvent.Kind.POWER_LIMITED).orElseThrow();
    assertThat(limited.text()).isEqualTo("Stored: P0299, turbocharger A underboost.");
    assertThat(heard.first(AdviceEvent.Kind.DERATE_BEGAN)).isEmpty();
    assertThat(heard.last().advice().state()).isEqualTo(AdviceLine.State.LIMITED_POWER);
    assertThat(heard.last().advice().action()).isEqualTo("Power limited, P0299");
    assertThat(heard.last().advice().easedSpeed()).isEmpty();
  }

  // Soft derate: the charge air is at its limit of 85 degC, no code; easing brings power back.
  @Test
  void aSoftDerateIsADerate() {
    codes(NONE_STORED);
    drive(60, 90, 90, 86);
    drive(30, 90, 65, 86);

    AdviceEvent derate = heard.first(AdviceEvent.Kind.DERATE_BEGAN).orElseThrow();
    assertThat(derate.channel()).contains(Channels.CHARGE_AIR_TEMP_OUT);
    assertThat(heard.first(AdviceEvent.Kind.POWER_LIMITED)).isEmpty();
    assertThat(heard.last().advice().state()).isNotEqualTo(AdviceLine.State.LIMITED_POWER);
  }

  private void codes(String detail) {
    pipeline.accept(
        new TripEntry.OfEvent(
            new TripEvent(second * 1_000_000L, TripEvent.Kind.CODES, detail.strip())));
  }

  private void drive(int seconds, double demanded, double delivered, double chargeAir) {
    for (int end = second + seconds; second < end; second++) {
      hear(Channels.ENGINE_SPEED, 2200);
      hear(Channels.VEHICLE_SPEED, 80);
      hear(Channels.DEMANDED_TORQUE, demanded);
      hear(Channels.DELIVERED_TORQUE, delivered);
      hear(Channels.CHARGE_AIR_TEMP_OUT, chargeAir);
    }
    pipeline.advanceTo(second * 1_000_000L);
  }

  private void hear(Channel channel, double value) {
    pipeline.accept(new TripEntry.OfSample(new Sample(channel, second * 1_000_000L, value)));
  }

  private static Optional<AdviceEvent> raised(Heard heard, String rule) {
    return heard.advice.stream()
        .filter(event -> event.kind() == AdviceEvent.Kind.RAISED)
        .filter(event -> event.rule().equals(Optional.of(rule)))
        .findFirst();
  }
}
