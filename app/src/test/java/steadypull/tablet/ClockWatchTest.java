package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Stories of clocks that are set and of tablets that sleep, with hand-made clocks. */
class ClockWatchTest {
  private static final Duration SECOND = Duration.ofSeconds(1);

  private final ClockWatch watch = new ClockWatch();
  private Instant wall = Instant.parse("2026-07-15T17:45:12Z");
  private long monotonicNanos = 77;
  private long uptimeNanos = 1_000_000_000_000L;
  private boolean tellsUptime = true;

  /** Lets spans pass on each clock, then looks. */
  private List<TabletNews> after(Duration onWall, Duration onMonotonic, Duration onUptime) {
    wall = wall.plus(onWall);
    monotonicNanos += onMonotonic.toNanos();
    uptimeNanos += onUptime.toNanos();
    OptionalLong uptime = tellsUptime ? OptionalLong.of(uptimeNanos) : OptionalLong.empty();
    return watch.take(new ClockReading(wall, monotonicNanos, uptime));
  }

  private List<TabletNews> afterSecond() {
    return after(SECOND, SECOND, SECOND);
  }

  @Test
  void timeThatPassesAlikeIsNoNews() {
    for (int second = 0; second < 100; second++) {
      assertThat(afterSecond()).isEmpty();
    }
  }

  @Test
  void aClockThatIsSetForwardIsToldWithFromToAndSize() {
    afterSecond();
    Instant due = wall.plus(SECOND);

    List<TabletNews> news = after(Duration.ofSeconds(3601), SECOND, SECOND);

    assertThat(news)
        .containsExactly(new TabletNews.ClockSet(due, due.plus(Duration.ofHours(1)), false));
    assertThat(afterSecond()).as("told once").isEmpty();
  }

  @Test
  void aClockThatIsSetBackIsToldToo() {
    afterSecond();

    List<TabletNews> news = after(Duration.ofSeconds(-59), SECOND, SECOND);

    assertThat(((TabletNews.ClockSet) news.getFirst()).by()).isEqualTo(Duration.ofMinutes(-1));
  }

  // A time service corrects by little, and often.
  @Test
  void partingByTwoSecondsAndLessIsNoNews() {
    afterSecond();
    assertThat(after(Duration.ofSeconds(3), SECOND, SECOND)).isEmpty();
    assertThat(after(Duration.ofSeconds(-1), SECOND, SECOND)).isEmpty();
    assertThat(after(Duration.ofMillis(3001), SECOND, SECOND)).hasSize(1);
  }

  // Linux: CLOCK_MONOTONIC "does not count time that the system is suspended", clock_gettime(2).
  @Test
  void aSleepThatTheMonotonicClockMissedIsASleepAndNoSetting() {
    afterSecond();
    Duration slept = Duration.ofMinutes(12);

    List<TabletNews> news = after(SECOND.plus(slept), SECOND, SECOND.plus(slept));

    assertThat(news).containsExactly(new TabletNews.Slept(slept, true));
  }

  @Test
  void aSleepDuringWhichTheClockWasSetIsBoth() {
    afterSecond();
    Duration slept = Duration.ofMinutes(12);

    List<TabletNews> news = after(Duration.ofHours(2), SECOND, SECOND.plus(slept));

    assertThat(news).hasSize(2).first().isEqualTo(new TabletNews.Slept(slept, true));
    assertThat(((TabletNews.ClockSet) news.getLast()).by())
        .isEqualTo(Duration.ofHours(2).minus(slept).minus(SECOND));
  }

  @Test
  void whereUptimeIsNotToldAForwardClockMayHaveBeenASleep() {
    tellsUptime = false;
    afterSecond();

    assertThat(after(Duration.ofMinutes(5), SECOND, SECOND))
        .singleElement()
        .matches(news -> ((TabletNews.ClockSet) news).mayHaveSlept());
    assertThat(after(Duration.ofMinutes(-5), SECOND, SECOND))
        .as("nobody sleeps back in time")
        .singleElement()
        .matches(news -> !((TabletNews.ClockSet) news).mayHaveSlept());
  }

  @Test
  void aSleepThatBothClocksSawIsToldAsOne() {
    tellsUptime = false;
    afterSecond();
    Duration away = Duration.ofSeconds(40);

    assertThat(after(away, away, away)).containsExactly(new TabletNews.Slept(away, false));
  }

  @Test
  void aBusySecondIsNoSleep() {
    afterSecond();
    Duration busy = Duration.ofSeconds(9);

    assertThat(after(busy, busy, busy)).isEmpty();
  }

  /** Rules of the tz database (IANA): in these zones clocks change on these nights. */
  @Test
  void daylightSavingAndTravelAcrossZonesChangeNoInstant() {
    for (String zone : List.of("Europe/Berlin", "America/New_York", "Australia/Lord_Howe")) {
      var rules = ZoneId.of(zone).getRules();
      wall = rules.nextTransition(wall).getInstant().minusSeconds(5);
      ClockWatch night = new ClockWatch();
      for (int second = 0; second < 10; second++) {
        wall = wall.plus(SECOND);
        monotonicNanos += SECOND.toNanos();
        ClockReading reading = new ClockReading(wall, monotonicNanos, OptionalLong.empty());
        assertThat(night.take(reading)).as(zone).isEmpty();
      }
    }
  }

  @Test
  void ofAnyStepsOnlyThoseBeyondTwoSecondsAreToldAndTheirSumIsKept() {
    for (long seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      ClockWatch any = new ClockWatch();
      any.take(new ClockReading(wall, monotonicNanos, OptionalLong.empty()));
      List<Duration> set = new ArrayList<>();
      for (int second = 0; second < 60; second++) {
        Duration step =
            random.nextInt(10) == 0
                ? Duration.ofMillis(random.nextLong(-7_200_000, 7_200_000))
                : Duration.ofMillis(random.nextLong(-900, 900));
        wall = wall.plus(SECOND).plus(step);
        monotonicNanos += SECOND.toNanos();
        if (step.abs().compareTo(Duration.ofSeconds(2)) > 0) {
          set.add(step);
        }
        List<TabletNews> news =
            any.take(new ClockReading(wall, monotonicNanos, OptionalLong.empty()));
        assertThat(news).as("seed %d, second %d, step %s", seed, second, step).hasSizeLessThan(2);
        news.forEach(
            told -> assertThat(((TabletNews.ClockSet) told).by()).isEqualTo(set.removeFirst()));
        assertThat(set).as("seed %d, second %d", seed, second).isEmpty();
      }
    }
  }
}
