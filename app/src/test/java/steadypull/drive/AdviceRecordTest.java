package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.NewTrip;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** What became of advice is counted from what trips have kept. */
class AdviceRecordTest {
  @TempDir private Path folder;

  private static TripEvent kept(double second, String event) {
    String detail = "{\"time_s\":%s,\"event\":\"%s\",\"rule\":\"x\"}".formatted(second, event);
    return new TripEvent(Math.round(second * 1e6), TripEvent.Kind.ADVICE, detail);
  }

  @Test
  void aTripTellsHowOftenAdviceWasFollowedAndHeld() {
    List<TripEvent> events =
        List.of(
            kept(10, "raised"),
            kept(60, "advice-held"),
            kept(61, "cleared"),
            kept(200, "advice-failed"),
            kept(300, "advice-not-followed"),
            new TripEvent(400_000_000, TripEvent.Kind.ADVICE, "{\"event\":"),
            new TripEvent(500_000_000, TripEvent.Kind.MARK, "advice-held"));
    assertThat(AdviceRecord.of(events)).isEqualTo(new AdviceRecord(3, 2, 1));
  }

  @Test
  void aVehicleTellsItOfAllItsTripsAndOfNoOthers() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      keep(library, "rig", "advice-held");
      keep(library, "rig", "advice-not-followed");
      keep(library, "other", "advice-failed");
      assertThat(AdviceRecord.ofVehicle(library, "rig")).isEqualTo(new AdviceRecord(2, 1, 1));
    }
  }

  private static void keep(TripLibrary library, String vehicle, String outcome) throws Exception {
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown(vehicle, CoolingLayout.AIR_TO_AIR),
            DemoDrives.START,
            "",
            "test",
            "0.1.0");
    try (TripRecorder recorder = library.begin(trip)) {
      recorder.append(new Sample(Channels.ENGINE_SPEED, 0, 1500.0));
      recorder.append(kept(10, outcome));
      recorder.seal(20_000_000L);
    }
  }

  @Test
  void moreThatHeldThanWasFollowedIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new AdviceRecord(3, 1, 2));
  }
}
