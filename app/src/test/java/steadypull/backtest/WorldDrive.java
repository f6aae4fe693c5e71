package steadypull.backtest;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import steadypull.advice.AdviceEvent;
import steadypull.advice.RuleSet;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;
import steadypull.drive.DriveSetup;
import steadypull.drive.PipelineOutput;
import steadypull.drive.Replay;
import steadypull.road.RoadSight;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.LimitForecast;

/**
 * A world driven from end to end through the pipeline of the live drive: what was said, what was
 * foretold, and what came.
 *
 * @param world the world
 * @param events what the rules said, in order
 * @param derates seconds at which the plant began to take torque away, and ended
 * @param celsius what each thermal sensor said, by second, from second 1 on at index 1
 * @param fans the forecasts of every second, likewise; null where there was none
 * @param toLimits when each channel with a limit meets it, likewise
 * @param seconds that it lasted
 * @param microsPerSecond processor time of the whole pipeline a second driven, the plant's left out
 */
record WorldDrive(
    TowingWorld world,
    List<AdviceEvent> events,
    List<int[]> derates,
    Map<Channel, double[]> celsius,
    Map<Channel, Fan[]> fans,
    Map<Channel, LimitForecast[]> toLimits,
    int seconds,
    double microsPerSecond) {
  private static final RuleSet RULES = RuleSet.shipped();

  /** Whether the road ahead is known. */
  enum Road {
    UNKNOWN,
    KNOWN
  }

  /** Breaks that are shorter belong to one derate. */
  private static final int ONE_DERATE_SECONDS = 30;

  /** What a sensor said at a second, degC; endlessly cold where there is none. */
  double celsius(Channel channel, int second) {
    double[] all = celsius.get(channel);
    return all == null ? Double.NEGATIVE_INFINITY : all[second];
  }

  /** Drives a world from its beginning to its end. */
  static WorldDrive of(TowingWorld world, Road road) {
    Drive drive = DemoWorld.drive(world.scenario(), world.number());
    Taking taking = new Taking((int) world.scenario().duration().toSeconds() + 2, world.missing());
    DriveSetup setup =
        new DriveSetup(world.vehicle(), RULES, Locale.ENGLISH, UnitSystem.METRIC, true);
    RoadSight sight =
        new RoadKnownByOdometer(
            world.road(), world.number() + 1L, () -> drive.state().motion().distance());
    Replay replay =
        road == Road.KNOWN
            ? new Replay(setup, Optional.of(sight), taking)
            : new Replay(setup, taking);
    List<int[]> derates = new ArrayList<>();
    long before = cpuNanos();
    int seconds =
        (int)
            (replay.<RuntimeException>run(taker -> pour(drive, taker, taking, derates))
                / 1_000_000);
    long nanos = cpuNanos() - before - taking.plantNanos;
    return new WorldDrive(
        world,
        taking.events,
        derates,
        taking.celsius,
        taking.fans,
        taking.toLimits,
        seconds,
        nanos / 1e3 / seconds);
  }

  private static void pour(
      Drive drive, Consumer<Sample> taker, Taking taking, List<int[]> derates) {
    for (int second = 1; !drive.isOver(); second++) {
      long before = cpuNanos();
      List<Sample> samples = poll(drive, second, taking);
      noteDerate(drive.state().isDerated(), second, derates);
      taking.plantNanos += cpuNanos() - before;
      samples.forEach(taker);
    }
  }

  /** Processor time of this thread: other work on the machine counts for nothing. */
  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static void noteDerate(boolean isDerated, int second, List<int[]> derates) {
    if (!isDerated) {
      return;
    }
    if (derates.isEmpty() || second - derates.getLast()[1] > ONE_DERATE_SECONDS) {
      derates.add(new int[] {second, second});
    }
    derates.getLast()[1] = second;
  }

  private static List<Sample> poll(Drive drive, int second, Taking taking) {
    List<Sample> samples = new ArrayList<>();
    Sensor[] sensors = Sensor.values();
    for (int i = 0; i < sensors.length; i++) {
      double at = second - 0.5 + 0.5 * i / sensors.length;
      drive.advanceTo(at);
      double value = drive.read(sensors[i]);
      Channels.find(sensors[i].channel())
          .filter(channel -> taking.isTold(channel))
          .ifPresent(
              channel -> {
                samples.add(new Sample(channel, Math.round(at * 1e6), value));
                if (Channels.thermal().contains(channel)) {
                  taking.celsius(channel)[second] = value;
                }
              });
    }
    drive.advanceTo(second);
    return samples;
  }

  private static final class Taking implements PipelineOutput {
    private final int most;
    private final Set<Channel> missing;
    private final List<AdviceEvent> events = new ArrayList<>();
    private final Map<Channel, double[]> celsius = new HashMap<>();
    private final Map<Channel, Fan[]> fans = new HashMap<>();
    private final Map<Channel, LimitForecast[]> toLimits = new HashMap<>();
    private long plantNanos;

    Taking(int most, Set<Channel> missing) {
      this.most = most;
      this.missing = missing;
    }

    boolean isTold(Channel channel) {
      return !missing.contains(channel);
    }

    double[] celsius(Channel channel) {
      return celsius.computeIfAbsent(channel, _ -> new double[most]);
    }

    @Override
    public void advice(AdviceEvent event) {
      events.add(event);
    }

    @Override
    public void forecast(Forecast forecast) {
      int second = (int) (forecast.timeMicros() / 1_000_000);
      for (ChannelForecast channel : forecast.channels()) {
        if (channel instanceof ChannelForecast.Ready ready && second < most) {
          fans.computeIfAbsent(channel.channel(), _ -> new Fan[most])[second] = ready.fan();
          ready.toLimit().ifPresent(limit -> note(channel.channel(), second, limit));
        }
      }
    }

    private void note(Channel channel, int second, LimitForecast limit) {
      toLimits.computeIfAbsent(channel, _ -> new LimitForecast[most])[second] = limit;
    }
  }
}
