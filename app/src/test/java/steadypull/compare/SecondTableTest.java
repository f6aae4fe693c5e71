package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** A roller's file or a box of thermocouples, on a clock of its own, on a trip. */
class SecondTableTest {
  private static final Channel PROBE = new Channel("probe_core_out", "degC");

  /**
   * Engine speed of a day on rollers: up through the gears, a pull, down again; r/min at a time.
   */
  private static double turning(double seconds) {
    double cycle = seconds % 257;
    double base = 750 + ramp(cycle, 20, 600) + ramp(cycle, 35, 450) - ramp(cycle, 140, 300);
    return base - ramp(cycle, 250, 750) + 60 * Math.sin(seconds / 9) + 0.5 * seconds;
  }

  private static double ramp(double seconds, double from, double rise) {
    return rise * Math.clamp((seconds - from) / 3, 0.0, 1.0);
  }

  private static TripSeconds record(
      String name, int lasts, double startsAt, double noise, double scale, long seed) {
    Random random = new Random(seed);
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < lasts * 4; i++) {
      double seconds = i / 4.0;
      long micros = Math.round(seconds * 1e6);
      double rpm = scale * turning(startsAt + seconds) + noise * random.nextGaussian();
      samples.add(new Sample(Channels.ENGINE_SPEED, micros, rpm));
      if (!name.equals("trip")) {
        samples.add(new Sample(PROBE, micros, startsAt + seconds));
        samples.add(new Sample(Channels.WHEEL_POWER, micros, 90));
      }
    }
    return PlantTrip.of(name, samples);
  }

  private static TripSeconds trip() {
    return record("trip", 700, 0, 3, 1, 1);
  }

  private static SecondTable.Joined joined(TripSeconds table) {
    SecondTable result = SecondTable.join(trip(), table);
    assertThat(result).isInstanceOf(SecondTable.Joined.class);
    return (SecondTable.Joined) result;
  }

  /**
   * Whatever the clocks say, the lag comes out, or it is refused because a pull before or after
   * fits too; and it lies within its error as often as that claims.
   */
  @Test
  void theLagIsFoundAndItsErrorHolds() {
    Random random = new Random(5);
    int found = 0;
    int within = 0;
    for (int draw = 0; draw < 30; draw++) {
      double lag = -60 + 300 * random.nextDouble();
      double noise = 20 + 45 * (draw % 3);
      if (SecondTable.join(trip(), record("box", 400, lag, noise, 1, 100 + draw))
          instanceof SecondTable.Joined joined) {
        found++;
        assertThat(joined.lagSeconds()).as("lag " + lag).isCloseTo(lag, within(1.0));
        within += Math.abs(joined.lagSeconds() - lag) <= joined.errorSeconds() ? 1 : 0;
      }
    }
    assertThat(found).isGreaterThanOrEqualTo(15);
    assertThat(within).isGreaterThanOrEqualTo(found - 2);
  }

  @Test
  void whatTheTableTellsLiesOnTheClockOfTheTrip() {
    TripSeconds table = record("box", 300, 120.4, 3, 1, 7);

    SecondTable.Joined joined = joined(table);

    assertThat(joined.added()).contains(PROBE, Channels.WHEEL_POWER);
    assertThat(joined.trip().at(PROBE, 200).orElseThrow()).isCloseTo(200, within(0.5));
    assertThat(joined.trip().at(PROBE, 100)).isEmpty();
    assertThat(joined.trip().power().basis()).isEqualTo(PullPower.Basis.WHEELS);
    assertThat(joined.sentence(new RunWords(Locale.ENGLISH)))
        .matches("The second table begins 120\\.\\d s into the trip, to within 0\\.\\d s .*");
  }

  @Test
  void anotherEngineIsRefused() {
    List<Sample> samples = new ArrayList<>();
    Random random = new Random(3);
    double rpm = 1500;
    for (int second = 0; second < 400; second++) {
      rpm = Math.clamp(rpm + 120 * random.nextGaussian(), 700, 3300);
      samples.add(new Sample(Channels.ENGINE_SPEED, second * 1_000_000L, rpm));
    }

    assertThat(SecondTable.join(trip(), PlantTrip.of("other", samples)))
        .isInstanceOfSatisfying(
            SecondTable.Refused.class,
            refused ->
                assertThat(refused.reason())
                    .matches(
                        "Could not bring other onto trip: expected engine speed in both.*found a"
                            + " correlation of 0\\.\\d\\d at best, 0\\.9 is needed\\..*"));
  }

  @Test
  void wheelsInPlaceOfAnEngineAreRefused() {
    assertThat(SecondTable.join(trip(), record("wheels", 400, 50, 3, 0.27, 4)))
        .isInstanceOfSatisfying(
            SecondTable.Refused.class,
            refused -> assertThat(refused.reason()).contains("one that is 0.27 times the other"));
  }

  @Test
  void aSteadyEngineHoldsNoTime() {
    List<Sample> samples = new ArrayList<>();
    for (int second = 0; second < 400; second++) {
      samples.add(new Sample(Channels.ENGINE_SPEED, second * 1_000_000L, 2000 + second % 2));
    }

    assertThat(SecondTable.join(trip(), PlantTrip.of("steady", samples)))
        .isInstanceOfSatisfying(
            SecondTable.Refused.class,
            refused -> assertThat(refused.reason()).contains("one that hardly changes"));
  }

  /** Repeats that are each other's image fit at two places. */
  @Test
  void pullsThatRepeatExactlyAreRefusedAsAmbiguous() {
    List<Sample> trip = new ArrayList<>();
    List<Sample> table = new ArrayList<>();
    for (int second = 0; second < 600; second++) {
      double rpm = second % 200 < 80 ? 2200 : 1000;
      trip.add(new Sample(Channels.ENGINE_SPEED, second * 1_000_000L, rpm));
      if (second < 200) {
        table.add(new Sample(Channels.ENGINE_SPEED, second * 1_000_000L, rpm));
      }
    }

    assertThat(SecondTable.join(PlantTrip.of("trip", trip), PlantTrip.of("one", table)))
        .isInstanceOfSatisfying(
            SecondTable.Refused.class,
            refused -> assertThat(refused.reason()).contains("two places where they fit"));
  }
}
