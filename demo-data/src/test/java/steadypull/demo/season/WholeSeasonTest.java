package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What holds for every trip of the season, found out in one run over all of them. */
class WholeSeasonTest {
  private static final BusGrid GRID = new BusGrid();
  private static List<Run> runs = List.of();

  @BeforeAll
  static void driveTheSeason() {
    runs = Season.of(1).trips().parallelStream().map(Run::new).toList();
  }

  @Test
  void seasonIsBigEnoughToBeAlive() {
    double hours = runs.stream().mapToDouble(run -> run.endMicros / 3.6e9).sum();
    long samples = runs.stream().mapToLong(run -> run.samples).sum();
    System.out.printf(
        Locale.ROOT, "season: %d trips, %.1f h, %d samples%n", runs.size(), hours, samples);

    assertThat(runs).hasSizeBetween(40, 80);
    assertThat(hours).isBetween(30.0, 60.0);
    assertThat(samples).isBetween(4_000_000L, 8_000_000L);
    assertThat(vehicles()).hasSizeGreaterThanOrEqualTo(5);
  }

  @Test
  void everyTripLastsFromTenMinutesToTwoHours() {
    for (Run run : runs) {
      assertThat(Duration.ofNanos(run.endMicros * 1000))
          .as("%s", run.trip)
          .isBetween(Duration.ofMinutes(10), Duration.ofHours(2));
    }
  }

  @Test
  void timesNeverGoBackAndBeginAtZero() {
    for (Run run : runs) {
      assertThat(run.wentBack).as("%s", run.trip).isFalse();
      assertThat(run.firstMicros).as("%s", run.trip).isZero();
      assertThat(run.lastMicros).as("%s", run.trip).isLessThanOrEqualTo(run.endMicros);
    }
  }

  @Test
  void everyBusValueIsOneThatTheReaderCouldHaveDecoded() {
    for (Run run : runs) {
      assertThat(run.offGrid).as("%s", run.trip).isEmpty();
    }
  }

  @Test
  void tripsTellTheChannelsThatTheyPromise() {
    for (Run run : runs) {
      Set<String> promised = new TreeSet<>(run.trip.channelHeaders());
      if (run.trip.toString().contains("hold") || run.trip.toString().contains("pulls")) {
        promised.removeAll(Set.of("latitude[deg]", "longitude[deg]", "altitude[m]"));
      }
      assertThat(run.channels).as("%s", run.trip).isEqualTo(promised);
    }
  }

  @Test
  void noVehicleIsInTwoPlacesAtOnceAndTripsAreInOrder() {
    Map<String, Instant> busyUntil = new HashMap<>();
    Instant last = Instant.MIN;
    for (Run run : runs) {
      Instant start = run.trip.start();
      assertThat(start).as("%s", run.trip).isAfter(last);
      assertThat(start)
          .as("%s", run.trip)
          .isAfter(busyUntil.getOrDefault(run.trip.vehicleName(), Instant.MIN));
      busyUntil.put(run.trip.vehicleName(), start.plusNanos(run.endMicros * 1000));
      last = start;
    }
  }

  @Test
  void seasonCrossesAClockChangeAndFiveMonths() {
    assertThat(runs.stream().map(run -> run.trip.offset()))
        .contains(ZoneOffset.ofHours(-3), ZoneOffset.ofHours(-2));
    assertThat(Duration.between(runs.getFirst().trip.start(), runs.getLast().trip.start()))
        .isBetween(Duration.ofDays(140), Duration.ofDays(170));
  }

  @Test
  void everyTripEndsWithTheEngineStopped() {
    for (Run run : runs) {
      assertThat(run.lastSpeed).as("%s", run.trip).isZero();
      assertThat(run.lastEngineSpeed).as("%s", run.trip).isZero();
      assertThat(run.enginesStopped).as("%s", run.trip).isOne();
    }
  }

  /** Firm braking with a trailer (common practice, no source), and rollers that spin up. */
  @Test
  void nobodyBrakesOrPullsHarderThanATrailerAllows() {
    for (Run run : runs) {
      assertThat(run.hardest).as("m/s2, %s", run.trip).isLessThan(2);
    }
  }

  private static Set<String> vehicles() {
    Set<String> names = new TreeSet<>();
    runs.forEach(run -> names.add(run.trip.vehicleName()));
    return names;
  }

  /** What is remembered of one trip. */
  private static final class Run implements SeasonSink {
    private final SeasonTrip trip;
    private final long endMicros;
    private final Set<String> channels = new TreeSet<>();
    private final Set<String> offGrid = new TreeSet<>();
    private long samples;
    private long firstMicros = -1;
    private long lastMicros;
    private boolean wentBack;
    private double lastSpeed = -1;
    private double lastEngineSpeed;
    private double hardest;
    private long speedFrom;
    private double speedThen;
    private int enginesStopped;

    Run(SeasonTrip trip) {
      this.trip = trip;
      endMicros = trip.drive(this);
    }

    @Override
    public void sample(String channelHeader, long timeMicros, double value) {
      seen(timeMicros);
      samples++;
      channels.add(channelHeader);
      if (channelHeader.equals("vehicle_speed[km/h]")) {
        speed(timeMicros, value);
      } else if (channelHeader.equals("engine_speed[r/min]")) {
        lastEngineSpeed = value;
      }
      if (!isLocated(channelHeader) && !GRID.holds(channelHeader, value)) {
        offGrid.add(channelHeader + " " + value);
      }
    }

    /** Over two seconds, as the bus's step of 1 km/h is a coarse one. */
    private void speed(long timeMicros, double value) {
      if (timeMicros - speedFrom >= 2_000_000) {
        double change = Math.abs(value - speedThen) / 3.6 / ((timeMicros - speedFrom) / 1e6);
        hardest = Math.max(hardest, lastSpeed < 0 ? 0 : change);
        speedFrom = timeMicros;
        speedThen = value;
      }
      lastSpeed = value;
    }

    private static boolean isLocated(String header) {
      return header.startsWith("l") || header.startsWith("altitude");
    }

    @Override
    public void happened(SeasonEvent event) {
      seen(event.timeMicros());
      enginesStopped += event instanceof SeasonEvent.EngineStopped ? 1 : 0;
    }

    private void seen(long timeMicros) {
      firstMicros = firstMicros < 0 ? timeMicros : firstMicros;
      wentBack |= timeMicros < lastMicros;
      lastMicros = timeMicros;
    }
  }
}
