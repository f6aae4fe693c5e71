package steadypull.backtest;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import steadypull.advice.AdviceLine;
import steadypull.advice.RuleSet;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;
import steadypull.drive.DriveSetup;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PipelineOutput;
import steadypull.drive.Replay;

/**
 * The derates of a world whose driver heeds nothing, and what became of each where the advice was
 * followed.
 *
 * @param episodes in the order of the road
 */
record FollowedWorld(List<Episode> episodes) {
  private static final RuleSet RULES = RuleSet.shipped();

  /** A slower drive takes longer to where the derate was. */
  private static final double LONGER = 1.4;

  private static final int UNSCORED_SECONDS = 120;
  private static final double NEW_EPISODE_METRES = 3000;
  private static final double BEFORE_METRES = 2000;
  private static final double BEHIND_METRES = 3000;
  private static final double PARKING_BEFORE_METRES = 1500;
  private static final double KILOMETRES_PER_HOUR = 3.6;

  FollowedWorld {
    episodes = List.copyOf(episodes);
  }

  /**
   * One derate.
   *
   * @param metres where it began
   * @param remedy the mildest that prevents it in the plant
   * @param isPrevented whether following the advice did
   * @param isStopAdvised whether a stop was advised before it
   */
  record Episode(double metres, Remedy remedy, boolean isPrevented, boolean isStopAdvised) {}

  /** What it takes. */
  enum Remedy {
    /** The lowest advisable speed. */
    SPEED,
    /** That speed, and a stop of three minutes shortly before; or what the advice led to. */
    STOP,
    /** Nothing that may be advised. */
    NOTHING
  }

  /** Drives a world as it is, as slowly as advisable, and with the advice followed. */
  static FollowedWorld of(int number, Duration lasts) {
    TowingWorld world = TowingWorld.of(number, lasts);
    List<Double> heedless = episodes(derates(world, drive -> {}));
    if (heedless.isEmpty()) {
      return new FollowedWorld(List.of());
    }
    TowingWorld longer =
        TowingWorld.of(number, Duration.ofSeconds(Math.round(LONGER * lasts.toSeconds())));
    Followed followed = new Followed(longer);
    List<Double> slow = derates(longer, careful(longer, Double.POSITIVE_INFINITY));
    List<Episode> all = new ArrayList<>();
    for (double metres : heedless) {
      boolean isPrevented = isNone(followed.derates, metres);
      Remedy remedy =
          isNone(slow, metres) ? Remedy.SPEED : beyondSpeed(longer, metres, isPrevented);
      all.add(new Episode(metres, remedy, isPrevented, followed.wasSentToStop(metres)));
    }
    return new FollowedWorld(all);
  }

  private static Remedy beyondSpeed(TowingWorld world, double metres, boolean isPrevented) {
    boolean isStopEnough = isPrevented || isNone(derates(world, careful(world, metres)), metres);
    return isStopEnough ? Remedy.STOP : Remedy.NOTHING;
  }

  private static boolean isNone(List<Double> derates, double metres) {
    return derates.stream()
        .noneMatch(at -> at >= metres - BEFORE_METRES && at <= metres + BEHIND_METRES);
  }

  /** As slowly as advisable all the way, and a stop of three minutes before a place. */
  private static Consumer<Drive> careful(TowingWorld world, double metres) {
    double slow = world.vehicle().speeds().lowestKilometresPerHour() / KILOMETRES_PER_HOUR;
    int[] stood = {0};
    return drive -> {
      boolean isThere = drive.state().motion().distance() >= metres - PARKING_BEFORE_METRES;
      boolean stops = isThere && stood[0] < 180;
      drive.goNoFasterThan(stops ? 0 : slow);
      stood[0] += stops && drive.state().motion().speed() < 0.5 ? 1 : 0;
    };
  }

  /** Where the plant began to take torque away, in metres from the start. */
  private static List<Double> derates(TowingWorld world, Consumer<Drive> driver) {
    Drive drive = DemoWorld.drive(world.scenario(), world.number());
    List<Double> derates = new ArrayList<>();
    for (int second = 1; !drive.isOver(); second++) {
      driver.accept(drive);
      drive.advanceTo(second);
      note(drive, second, derates);
    }
    return derates;
  }

  private static void note(Drive drive, int second, List<Double> derates) {
    if (second >= UNSCORED_SECONDS && drive.state().isDerated()) {
      derates.add(drive.state().motion().distance());
    }
  }

  /** Where each of them began, breaks of some kilometres apart. */
  private static List<Double> episodes(List<Double> derated) {
    List<Double> begun = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (double metres : derated) {
      if (metres - last > NEW_EPISODE_METRES) {
        begun.add(metres);
      }
      last = metres;
    }
    return begun;
  }

  /** A drive through the pipeline of the live drive whose driver heeds it. */
  private static final class Followed implements PipelineOutput {
    final List<Double> derates = new ArrayList<>();
    private final List<Double> stops = new ArrayList<>();
    private final TowingWorld world;
    private final Drive drive;
    private final HeedingDriver driver;

    Followed(TowingWorld world) {
      this.world = world;
      drive = DemoWorld.drive(world.scenario(), world.number());
      driver = new HeedingDriver(drive, world.vehicle().speeds().lowestKilometresPerHour());
      DriveSetup setup =
          new DriveSetup(world.vehicle(), RULES, Locale.ENGLISH, UnitSystem.METRIC, true);
      new Replay(setup, this).<RuntimeException>run(taker -> pour(taker));
    }

    private void pour(Consumer<Sample> taker) {
      for (int second = 1; !drive.isOver(); second++) {
        Sensor[] sensors = Sensor.values();
        for (int i = 0; i < sensors.length; i++) {
          double at = second - 0.5 + 0.5 * i / sensors.length;
          drive.advanceTo(at);
          double value = drive.read(sensors[i]);
          Channels.find(sensors[i].channel())
              .filter(channel -> !world.missing().contains(channel))
              .ifPresent(channel -> taker.accept(new Sample(channel, Math.round(at * 1e6), value)));
        }
        drive.advanceTo(second);
        note(drive, second, derates);
      }
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      AdviceLine line = snapshot.advice();
      driver.read(line);
      boolean isAsking =
          line.state() == AdviceLine.State.ADVISE || line.state() == AdviceLine.State.ACT_NOW;
      if (isAsking && line.action().startsWith("Next parking area")) {
        stops.add(drive.state().motion().distance());
      }
    }

    boolean wasSentToStop(double metres) {
      return !isNone(stops, metres);
    }
  }
}
