package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.advice.RuleSet;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Scenario;
import steadypull.drive.DriveSetup;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PipelineOutput;
import steadypull.drive.Replay;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.vehicle.Vehicle;

/**
 * What a tick costs in processor time of its one thread, so that other work on the machine counts
 * for little, beside a loop of exponentials: a slow minute slows both. An hour at 1 Hz with every
 * channel, as the heavy rig tells it; the road known is the hills that an invented hour might have.
 */
@Tag("bench")
class ForecastPaceBenchTest {
  private static final int HOUR_SECONDS = 3600;
  private static final int CHANNELS = 20;

  /** In loops of exponentials, a quarter to a third more than was measured. */
  private static final double MOST_HELD = 4;

  private static final double MOST_KNOWN = 5;
  private static final double MOST_SECOND_HELD = 5.5;
  private static final double MOST_SECOND_KNOWN = 7;

  /** 32 draws of 53 steps of 7 stores, and where they settle: as many as there once were. */
  private static final int STEPS = 32 * 53 * 7 + 145 * 7;

  private static final int RUNS = 3;

  private final Vehicle vehicle = TestVehicles.heavy();
  private final List<List<Sample>> hour = hour();

  @Test
  void printWhatATickAndTheReplayOfAnHourCost() {
    double[] held = new double[RUNS];
    double[] known = new double[RUNS];
    double[] loop = new double[RUNS];
    double[] replayHeld = new double[RUNS];
    double[] replayKnown = new double[RUNS];
    for (int run = 0; run < RUNS; run++) {
      held[run] = microsATick(new RoadAhead.Unknown());
      known[run] = microsATick(hills());
      loop[run] = microsALoop();
      replayHeld[run] = secondsToReplay(Optional.empty());
      replayKnown[run] = secondsToReplay(Optional.of(new Hills()));
    }
    System.out.printf(
        Locale.ROOT,
        "%nprocessor time, %d channels: a tick %.0f us load held, %.0f us road known; %d"
            + " exponentials %.0f us;%nan hour replayed in %.1f s load held, %.1f s road known;"
            + " load of the machine %.1f%n",
        CHANNELS,
        least(held),
        least(known),
        STEPS,
        least(loop),
        least(replayHeld),
        least(replayKnown),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    double unit = least(loop);
    assertThat(least(held) / unit).isLessThan(MOST_HELD);
    assertThat(least(known) / unit).isLessThan(MOST_KNOWN);
    assertThat(least(replayHeld) * 1e6 / HOUR_SECONDS / unit).isLessThan(MOST_SECOND_HELD);
    assertThat(least(replayKnown) * 1e6 / HOUR_SECONDS / unit).isLessThan(MOST_SECOND_KNOWN);
  }

  private double microsATick(RoadAhead ahead) {
    ThermalForecaster forecaster = new ThermalForecaster(vehicle);
    long before = cpuNanos();
    for (int second = 0; second < HOUR_SECONDS; second++) {
      hour.get(second).forEach(forecaster::accept);
      forecaster.accept(ahead);
      Forecast forecast = forecaster.tick((second + 1) * 1_000_000L);
      if (second == HOUR_SECONDS - 1) {
        assertThat(forecast.channels()).hasSizeGreaterThanOrEqualTo(6);
        assertThat(forecast.assumption())
            .isInstanceOf(
                ahead instanceof RoadAhead.Known
                    ? Forecast.Assumption.RoadKnown.class
                    : Forecast.Assumption.LoadHeld.class);
      }
    }
    return (cpuNanos() - before) / 1e3 / HOUR_SECONDS;
  }

  private double secondsToReplay(Optional<RoadSight> sight) {
    DriveSetup setup =
        new DriveSetup(vehicle, RuleSet.shipped(), Locale.ENGLISH, UnitSystem.METRIC, true);
    PipelineOutput nobody =
        new PipelineOutput() {
          @Override
          public void second(long timeMicros, Supplier<DriveSnapshot> picture) {}
        };
    Replay replay =
        sight.isPresent() ? new Replay(setup, sight, nobody) : new Replay(setup, nobody);
    long before = cpuNanos();
    replay.<RuntimeException>run(taker -> hour.forEach(second -> second.forEach(taker)));
    return (cpuNanos() - before) / 1e9;
  }

  private static double microsALoop() {
    double sum = 0;
    long before = cpuNanos();
    for (int second = 0; second < HOUR_SECONDS; second++) {
      for (int step = 0; step < STEPS; step++) {
        sum += Math.exp(-sum / (1 + step));
      }
    }
    assertThat(sum).isPositive();
    return (cpuNanos() - before) / 1e3 / HOUR_SECONDS;
  }

  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double least(double[] values) {
    return Arrays.stream(values).min().orElseThrow();
  }

  /** The long hot grade, driven again and again, its last {@link #CHANNELS} channels told. */
  private static List<List<Sample>> hour() {
    Scenario scenario = DemoWorld.scenario("long-hot-grade").orElseThrow();
    List<List<Sample>> hour = new ArrayList<>();
    for (int day = 0; hour.size() < HOUR_SECONDS; day++) {
      DemoSamples samples = new DemoSamples(DemoWorld.drive(scenario, day), Set.of());
      for (int second = 1; hour.size() < HOUR_SECONDS && !samples.isOver(); second++) {
        long shift = (hour.size() + 1 - second) * 1_000_000L;
        hour.add(moved(samples.until(second), shift));
      }
    }
    return hour;
  }

  private static List<Sample> moved(List<Sample> samples, long micros) {
    Map<Channel, Sample> told = new HashMap<>();
    samples.forEach(each -> told.put(each.channel(), each));
    List<Channel> left =
        List.of(Channels.BAROMETRIC_PRESSURE, Channels.ENGINE_LOAD, Channels.ACCELERATOR_PEDAL);
    return samples.stream()
        .filter(each -> !left.contains(each.channel()))
        .limit(CHANNELS)
        .map(each -> new Sample(each.channel(), each.timeMicros() + micros, each.value()))
        .toList();
  }

  private static RoadAhead.Known hills() {
    double[] grades = new double[300];
    double[] errors = new double[grades.length];
    for (int piece = 0; piece < grades.length; piece++) {
      grades[piece] = 0.04 * Math.sin(piece / 30.0);
      errors[piece] = 0.003;
    }
    return new RoadAhead.Known(new GradeProfile(50, grades, errors), List.of());
  }

  private static final class Hills implements RoadSight {
    @Override
    public void fixed(PositionFix fix) {}

    @Override
    public void moved(double seconds, double metres) {}

    @Override
    public RoadAhead ahead() {
      return hills();
    }
  }
}
