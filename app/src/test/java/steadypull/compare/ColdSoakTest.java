package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** Before the first start of a day everything is as warm as the air. */
class ColdSoakTest {
  private static final RunWords ENGLISH = new RunWords(Locale.ENGLISH);

  private static final Map<Channel, Double> COLD =
      Map.of(
          Channels.AMBIENT_AIR_TEMP, 9.0,
          Channels.ENGINE_COOLANT_TEMP, 10.0,
          Channels.ENGINE_OIL_TEMP, 10.0,
          Channels.CHARGE_COOLANT_TEMP, 9.0,
          Channels.CHARGE_AIR_TEMP_IN, 11.0);

  /** A trip that begins with those temperatures and an engine that turns or stands. */
  private static TripSeconds trip(Map<Channel, Double> celsius, double turning) {
    List<Sample> samples = new ArrayList<>();
    for (int second = 0; second < 20; second++) {
      long micros = second * 1_000_000L;
      celsius.forEach((channel, value) -> samples.add(new Sample(channel, micros, value)));
      samples.add(new Sample(Channels.ENGINE_SPEED, micros, turning));
    }
    return PlantTrip.of("morning", samples);
  }

  private static Map<Channel, Double> with(Channel channel, double celsius) {
    Map<Channel, Double> all = new HashMap<>(COLD);
    all.put(channel, celsius);
    return all;
  }

  @Test
  void sensorsWithinThreeKelvinAgree() {
    TripSeconds morning = trip(COLD, 0);

    assertThat(ColdSoak.of(morning)).isEqualTo(new ColdSoak.Agree(5, 1));
    assertThat(ColdSoak.caveats(List.of(morning), ENGLISH)).isEmpty();
  }

  @Test
  void oneThatErrsIsNamedWithItsError() {
    TripSeconds morning = trip(with(Channels.CHARGE_COOLANT_TEMP, 15), 0);

    assertThat(ColdSoak.of(morning)).isEqualTo(new ColdSoak.Apart(Channels.CHARGE_COOLANT_TEMP, 5));
    assertThat(ColdSoak.caveats(List.of(morning), ENGLISH))
        .containsExactly(
            "From a cold soak charge coolant read 5 K more than the other sensors of morning;"
                + " its temperatures may err by as much.");
  }

  /** An engine that runs warms and blows the air in its pipes at once. */
  @Test
  void airInThePipesCountsOnlyWhileTheEngineStands() {
    Map<Channel, Double> blown = with(Channels.CHARGE_AIR_TEMP_IN, 30);

    assertThat(ColdSoak.of(trip(blown, 720))).isInstanceOf(ColdSoak.Agree.class);
    assertThat(ColdSoak.of(trip(blown, 0))).isInstanceOf(ColdSoak.Apart.class);
  }

  @Test
  void aWarmEngineTellsNothing() {
    Map<Channel, Double> warm =
        Map.of(
            Channels.AMBIENT_AIR_TEMP, 20.0,
            Channels.ENGINE_COOLANT_TEMP, 55.0,
            Channels.ENGINE_OIL_TEMP, 54.0,
            Channels.TRANSMISSION_FLUID_TEMP, 53.0);

    assertThat(ColdSoak.of(trip(warm, 0))).isEqualTo(new ColdSoak.NotTold());
    assertThat(ColdSoak.caveats(List.of(trip(warm, 0)), ENGLISH))
        .singleElement()
        .asString()
        .startsWith("No trip begins cold");
  }

  @Test
  void twoSensorsAreNoCrossCheck() {
    Map<Channel, Double> two =
        Map.of(Channels.AMBIENT_AIR_TEMP, 9.0, Channels.ENGINE_COOLANT_TEMP, 9.0);

    assertThat(ColdSoak.of(trip(two, 0))).isEqualTo(new ColdSoak.NotTold());
  }

  /** The caveat reaches the comparison. */
  @Test
  void aComparisonOfWarmPullsSaysThatNothingWasChecked() {
    TripSeconds pull =
        PlantTrip.onRollers(1).rollers(30, 0.15).rollers(60, 0.85).rollers(30, 0.15).read("pull");

    RunSet set =
        RunFinding.of(List.of(PlantTrip.before(pull)), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(set.caveats()).anyMatch(words -> words.startsWith("No trip begins cold"));
  }
}
