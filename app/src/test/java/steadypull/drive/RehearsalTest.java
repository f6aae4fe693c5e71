package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceEvent;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.review.ForecastScore;
import steadypull.review.Warning;
import steadypull.store.NewTrip;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** What a kept trip says to whoever scores it. */
@Execution(ExecutionMode.CONCURRENT)
class RehearsalTest {
  private static final int EASED_AT = 300;

  @TempDir private Path folder;

  @Test
  void aDriveUpTheHotGradeIsHeldAgainstItsOwnDerate() throws Exception {
    Heard live = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      String trip =
          demo.drive("demo:long-hot-grade?speed=max&start=240", 480, live).tripId().orElseThrow();
      Rehearsal.Rehearsed told = rehearsed(demo.library(), trip);

      AdviceEvent begun = live.first(AdviceEvent.Kind.DERATE_BEGAN).orElseThrow();
      assertThat(told.drive().derates()).isNotEmpty();
      assertThat(told.drive().derates().getFirst().fromSeconds())
          .as("the cut began before it had lasted long enough to be told")
          .isBetween(begun.timeMicros() / 1e6 - 6, begun.timeMicros() / 1e6);
      assertThat(told.drive().seconds()).isEqualTo(480);
      AdviceEvent first = live.firstToActOn().orElseThrow();
      assertThat(told.warnings())
          .anySatisfy(
              warning -> {
                assertThat(warning.fromSecond()).isEqualTo((int) (first.timeMicros() / 1e6));
                assertThat(warning.channel()).isEqualTo(Channels.CHARGE_AIR_TEMP_OUT);
              });
      Warning warning = told.warnings().getFirst();
      assertThat(told.drive().nearestKelvin(warning.channel(), warning.limitCelsius(), 1, 480))
          .as("it came to its limit")
          .isLessThan(2);
      ForecastScore score = new ForecastScore();
      score.add(told.drive(), told.warnings());
      assertThat(score.warned()).isEqualTo(score.derates()).isPositive();
      assertThat(told.isFollowed()).as("nobody listens in a simulated vehicle").isFalse();
    }
  }

  @Test
  void whoEasesTheLoadAfterAdviceHasFollowedIt() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(rehearsed(library, kept(library, advised("caution"))).isFollowed()).isTrue();
      assertThat(rehearsed(library, kept(library, advised("notice"))).isFollowed())
          .as("a notice asks for nothing")
          .isFalse();
      assertThat(rehearsed(library, kept(library, "{\"event\":")).isFollowed())
          .as("damaged words ask for nothing")
          .isFalse();
    }
  }

  private static String advised(String level) {
    return "{\"time_s\":290.0,\"event\":\"raised\",\"rule\":\"x\",\"level\":\"" + level + "\"}";
  }

  private static Rehearsal.Rehearsed rehearsed(TripLibrary library, String id) throws Exception {
    TripSummary trip = library.find(id);
    return Rehearsal.of(DemoDrives.ENGLISH.setup(library.vehicleOf(id), true), library, trip);
  }

  /** A level road at a steady load, and less of both from {@value #EASED_AT} s on. */
  private static String kept(TripLibrary library, String advice) throws Exception {
    Vehicle vehicle = Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR);
    try (TripRecorder recorder =
        library.begin(new NewTrip(vehicle, DemoDrives.START, "", "test", "0.1.0"))) {
      for (int second = 0; second < 400; second++) {
        if (second == EASED_AT - 10) {
          recorder.append(new TripEvent(second * 1_000_000L, TripEvent.Kind.ADVICE, advice));
        }
        boolean isEased = second >= EASED_AT;
        Map<Channel, Double> told =
            Map.of(
                Channels.VEHICLE_SPEED, isEased ? 70.0 : 90.0,
                Channels.ENGINE_SPEED, isEased ? 1800.0 : 2300.0,
                Channels.DELIVERED_TORQUE, isEased ? 50.0 : 70.0);
        for (var each : told.entrySet()) {
          recorder.append(new Sample(each.getKey(), second * 1_000_000L, each.getValue()));
        }
      }
      recorder.seal(400_000_000L);
      return recorder.tripId();
    }
  }
}
