package steadypull.vehicle.role;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Drive;
import steadypull.vehicle.CoolingLayout;

/** What a watch takes from readings, and how it is kept between drives. */
class SensorWatchTest {
  private static final double OUTSIDE = 12;

  private final SensorWatch watch = new SensorWatch(SensorEvidence.none());

  @Test
  void afterALongRestASensorThatDisagreesWithTheWeatherIsDoubted() {
    atStart(OUTSIDE + 1, Map.of("01.77.1", OUTSIDE + 22.0, "01.75.2", OUTSIDE - 1.0));

    assertThat(soak("01.77.1")).contains(22.0);
    assertThat(soak("01.75.2")).contains(-1.0);
    assertThat(RoleSurvey.of(watch.evidence(), CoolingLayout.AIR_TO_AIR).suspects())
        .containsExactly(new Suspect("01.77.1", new Suspect.OffAfterRest(22)));
  }

  @Test
  void anEngineThatIsStillWarmHasNotRested() {
    atStart(OUTSIDE + 30, Map.of("01.77.1", OUTSIDE + 22.0));

    assertThat(soak("01.77.1")).isEmpty();
  }

  /** Where one of two waters is stuck hot, the engine's own parameter tells that it has rested. */
  @Test
  void aStuckWaterSensorDoesNotHideTheRest() {
    atStart(OUTSIDE, Map.of("01.67.2", 85.0));

    assertThat(soak("01.67.2")).contains(85 - OUTSIDE);
  }

  /** Exhaust gas is hot seconds after the start, so that a running engine tells nothing of it. */
  @Test
  void exhaustSensorsAreOnlyCheckedBeforeTheEngineRuns() {
    atStart(OUTSIDE, Map.of("01.78.1", 140.0));

    assertThat(soak("01.78.1")).isEmpty();
  }

  @Test
  void onlyTheFirstHalfMinuteCanBeTheEndOfARest() {
    for (int second = 0; second < 40; second++) {
      hear(Channels.ENGINE_SPEED, second, 700);
      hear(Channels.AMBIENT_AIR_TEMP, second, OUTSIDE);
      watch.heard("01.05", second * 1_000_000L, OUTSIDE);
      if (second > 35) {
        watch.heard("01.77.1", second * 1_000_000L, 60);
      }
    }

    assertThat(soak("01.77.1")).isEmpty();
  }

  /** The program may go on through the night; the vehicle rests all the same. */
  @Test
  void aNightBetweenTwoStartsIsARest() {
    atStart(OUTSIDE + 70, Map.of());
    for (int second = 30_000; second < 30_003; second++) {
      hear(Channels.ENGINE_SPEED, second, 700);
      hear(Channels.AMBIENT_AIR_TEMP, second, OUTSIDE);
      watch.heard("01.05", second * 1_000_000L, OUTSIDE);
      watch.heard("01.77.1", second * 1_000_000L, OUTSIDE + 15);
    }

    assertThat(soak("01.77.1")).contains(15.0);
  }

  /** Fuel for the filter, not load, heats the exhaust then. */
  @Test
  void whileTheFilterRegeneratesNothingCounts() {
    hear(Channels.FILTER_REGENERATION, 0, 1);
    drive(0, 60, 200);
    assertThat(watch.evidence().sensors()).isEmpty();

    hear(Channels.FILTER_REGENERATION, 60, 0);
    drive(60, 120, 200);
    assertThat(boostSeconds("01.77.1")).isGreaterThan(50);
  }

  @Test
  void aDriveSeenInTwoHalvesTellsWhatTheWholeTells() {
    Drive drive = grade();
    SensorEvidence half = WiredVehicle.usual().drive(drive, SensorEvidence.none(), 520);
    SensorEvidence kept = SensorEvidenceJson.read(SensorEvidenceJson.write(half));
    SensorEvidence both = WiredVehicle.usual().drive(drive, kept, 2000);

    assertThat(kept).isEqualTo(half);
    assertThat(places(both)).isEqualTo(places(WiredVehicle.usual().drive(grade())));
  }

  /** A sensor that was connected elsewhere is believed after some drives, not after a lifetime. */
  @Test
  void whatWasSeenLongAgoCountsLess() {
    SensorEvidence evidence = SensorEvidence.none();
    for (int drives = 0; drives < 12; drives++) {
      evidence = WiredVehicle.usual().drive(grade(), evidence, 2000);
    }
    WiredVehicle swapped =
        new WiredVehicle()
            .wire("01.77.1", steadypull.demo.plant.Sensor.CHARGE_AIR_IN)
            .wire("01.75.2", steadypull.demo.plant.Sensor.CHARGE_AIR_OUT);
    for (int drives = 0; drives < 16; drives++) {
      evidence = swapped.drive(grade(), evidence, 2000);
    }

    assertThat(places(evidence)).containsEntry(Channels.CHARGE_AIR_TEMP_IN, "01.77.1");
  }

  @Test
  void aLinkThatBreaksForAMinuteCountsForNothing() {
    drive(0, 100, 200);
    double before = boostSeconds("01.77.1");
    hear(Channels.MANIFOLD_PRESSURE, 170, 200);
    watch.heard("01.77.1", 171_000_000, 60);

    assertThat(before).isGreaterThan(80);
    assertThat(boostSeconds("01.77.1") - before).isLessThanOrEqualTo(2);
  }

  @Test
  void aSensorThatFallsSilentStopsCounting() {
    drive(0, 100, 200);
    double before = boostSeconds("01.77.1");
    for (int second = 100; second < 300; second++) {
      hear(Channels.MANIFOLD_PRESSURE, second, 200);
    }

    assertThat(boostSeconds("01.77.1") - before).isLessThanOrEqualTo(15);
  }

  @Test
  void whileTheEngineStandsNothingCounts() {
    hear(Channels.ENGINE_SPEED, 0, 0);
    drive(0, 4, 200);

    assertThat(watch.evidence().sensors()).isEmpty();
  }

  @Test
  void signalsWhosePlaceIsNotInQuestionLeaveNoTrace() {
    watch.heard("22.1E1C.0", 0, 90);
    watch.heard("01.5C", 0, 90);
    drive(0, 10, 200);

    assertThat(watch.evidence().sensors()).containsOnlyKeys("01.77.1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{",
        "[]",
        "null",
        "{\"steadypull_sensor_evidence\":2}",
        "{\"steadypull_sensor_evidence\":1,\"sensors\":{\"01.77.1\":{\"lowest_degC\":1}}}",
        "{\"steadypull_sensor_evidence\":1,\"sensors\":{\"01.0C\":{}}}"
      })
  void evidenceThatCannotBeReadCountsAsNone(String text) {
    assertThat(SensorEvidenceJson.read(text)).isEqualTo(SensorEvidence.none());
  }

  private void atStart(double coolant, Map<String, Double> readings) {
    for (int second = 0; second < 3; second++) {
      hear(Channels.ENGINE_SPEED, second, 700);
      hear(Channels.AMBIENT_AIR_TEMP, second, OUTSIDE);
      watch.heard("01.05", second * 1_000_000L, coolant);
      for (Map.Entry<String, Double> each : readings.entrySet()) {
        watch.heard(each.getKey(), second * 1_000_000L, each.getValue());
      }
    }
  }

  private void drive(int from, int to, double kilopascals) {
    for (int second = from; second < to; second++) {
      hear(Channels.MANIFOLD_PRESSURE, second, kilopascals);
      watch.heard("01.77.1", second * 1_000_000L, 50 + second % 10);
    }
  }

  private void hear(Channel channel, int second, double value) {
    watch.heard(new Sample(channel, second * 1_000_000L, value));
  }

  private Optional<Double> soak(String key) {
    SensorRecord record = watch.evidence().sensors().get(key);
    return record == null ? Optional.empty() : record.soakKelvin().stream().boxed().findFirst();
  }

  private double boostSeconds(String key) {
    SensorRecord record = watch.evidence().sensors().get(key);
    return record == null ? 0 : record.boost().seconds();
  }

  private static Drive grade() {
    return DemoWorld.drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 1);
  }

  private static Map<Channel, String> places(SensorEvidence evidence) {
    return RoleSurvey.of(evidence, CoolingLayout.WATER_TO_AIR).proposals().stream()
        .collect(
            java.util.stream.Collectors.toMap(
                RoleFinding.Proposed::channel, RoleFinding.Proposed::signalKey));
  }
}
