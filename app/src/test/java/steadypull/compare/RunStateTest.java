package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.compare.RunStart.Known;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** Thermostat, converter and ground of a run, told from what was heard. */
class RunStateTest {
  private static Run only(TripSeconds trip) {
    RunSet set =
        RunFinding.of(List.of(PlantTrip.before(trip)), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);
    assertThat(set.runs()).hasSize(1);
    return set.runs().getFirst();
  }

  /** The plant's thermostat begins at 86 and is open at 95 degC. */
  @Test
  void aWeakRadiatorOpensTheThermostatAndAStrongOneNot() {
    Run weak = only(cooled(1000, 0.9));
    Run strong = only(cooled(6000, 0.5));
    Run between = only(cooled(6000, 0.9));

    assertThat(weak.series().at(Channels.ENGINE_COOLANT_TEMP, 230).orElse(0)).isGreaterThan(96);
    assertThat(weak.start().thermostat()).isEqualTo(Thermostat.OPEN);
    assertThat(strong.start().thermostat()).isEqualTo(Thermostat.REGULATING);
    assertThat(between.start().thermostat()).isEqualTo(Thermostat.UNKNOWN);
  }

  @Test
  void whereTheCoolantIsNotHeardTheThermostatIsUnknown() {
    PlantTrip trip = PlantTrip.onRollers(3).rollers(60, 0.15).rollers(120, 0.85).rollers(30, 0.15);
    TripSeconds deaf =
        trip.read("deaf", sample -> !sample.channel().equals(Channels.ENGINE_COOLANT_TEMP), 0);

    assertThat(only(deaf).start().thermostat()).isEqualTo(Thermostat.UNKNOWN);
  }

  private static TripSeconds cooled(double wattsPerKelvin, double share) {
    Rig rig = Rig.usual().with(RigTrait.ENGINE_RADIATOR_W_PER_K, wattsPerKelvin);
    return PlantTrip.onRollers(rig, 21, 30, 2)
        .rollers(240, 0.1)
        .rollers(300, share)
        .rollers(60, 0.1)
        .read("cooled");
  }

  /** An open converter turns the engine faster the more is pulled; a locked one does not. */
  @Test
  void aConverterThatSlipsUnderLoadIsOpen() {
    assertThat(only(turning(1.06)).start().converter()).isEqualTo(Known.NO);
    assertThat(only(turning(1.02)).start().converter()).isEqualTo(Known.UNKNOWN);
    assertThat(only(turning(1.0)).start().converter()).isEqualTo(Known.YES);
  }

  /** The engine turns faster by a factor while it pulls. */
  private static TripSeconds turning(double factor) {
    List<Sample> samples = new ArrayList<>();
    PlantTrip trip = PlantTrip.onRollers(4).rollers(60, 0.15).rollers(120, 0.85).rollers(60, 0.15);
    for (Sample sample : trip.samples()) {
      boolean isPulling = sample.timeMicros() > 61_000_000 && sample.timeMicros() < 179_000_000;
      samples.add(
          sample.channel().equals(Channels.ENGINE_SPEED) && isPulling
              ? new Sample(sample.channel(), sample.timeMicros(), sample.value() * factor)
              : sample);
    }
    return PlantTrip.of("turning", samples);
  }

  /** Places that stay tell rollers, places that come along a road, whatever else is heard. */
  @Test
  void placesTellTheRoadFromTheRollers() {
    assertThat(only(placed(0)).ground()).isEqualTo(Run.Ground.ROLLERS);
    assertThat(only(placed(2e-4)).ground()).isEqualTo(Run.Ground.ROAD);
  }

  private static TripSeconds placed(double degreesASecond) {
    PlantTrip trip = PlantTrip.onRollers(5);
    for (int second = 0; second < 200; second++) {
      trip.tell(Channels.LATITUDE, -38 + second * degreesASecond)
          .tell(Channels.LONGITUDE, -129)
          .rollers(1, second > 40 && second < 160 ? 0.85 : 0.15);
    }
    return trip.read("placed");
  }

  /** A hill without places: the load grows over seconds, so nothing speaks for rollers. */
  @Test
  void aHillWithoutPlacesIsNotTakenForRollers() {
    PlantTrip trip = PlantTrip.onRollers(6).road(100, 0, PlantTrip.ROLLERS);
    for (int step = 1; step <= 12; step++) {
      trip.road(1, step * 0.05 / 12, PlantTrip.ROLLERS);
    }
    trip.road(120, 0.05, PlantTrip.ROLLERS).road(60, 0, PlantTrip.ROLLERS);

    assertThat(only(trip.read("hill")).ground()).isNotEqualTo(Run.Ground.ROLLERS);
  }
}
