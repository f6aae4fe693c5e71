package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class TabletWatchTest {
  private static final Awake HELD = new Awake.Held(() -> true, () -> {});

  private final List<TabletNews> news = new ArrayList<>();
  private final List<String> asked = new ArrayList<>();
  private Instant wall = Instant.parse("2026-07-15T17:45:12Z");
  private long monotonicNanos;
  private Power power = new Power.Battery(80, true, false);

  private TabletWatch watch(Awake awake) {
    return new TabletWatch(new Tablet(() -> awake, this::power, this::clocks), news::add);
  }

  private Power power() {
    asked.add("power");
    return power;
  }

  private Optional<ClockReading> clocks() {
    monotonicNanos += 1_000_000_000;
    wall = wall.plusSeconds(1);
    return Optional.of(new ClockReading(wall, monotonicNanos, OptionalLong.empty()));
  }

  @Test
  void aWatchHoldsTheTabletAwakeUntilItIsClosed() {
    List<String> released = new ArrayList<>();
    try (TabletWatch watch = watch(new Awake.Held(() -> true, () -> released.add("released")))) {
      watch.look();
      assertThat(released).isEmpty();
    }
    assertThat(released).hasSize(1);
    assertThat(news).isEmpty();
  }

  @Test
  void aTabletThatMayFallAsleepIsToldOnce() {
    TabletWatch watch = watch(new Awake.NotHeld("no bus"));
    watch.look();
    watch.look();
    watch.close();

    assertThat(news).containsExactly(new TabletNews.MayFallAsleep("no bus"));
  }

  @Test
  void aLockThatIsLostOnTheWayIsToldOnce() {
    AtomicBoolean holds = new AtomicBoolean(true);
    TabletWatch watch = watch(new Awake.Held(holds::get, () -> {}));
    watch.look();
    assertThat(news).isEmpty();
    holds.set(false);
    for (int second = 0; second < 70; second++) {
      watch.look();
    }
    assertThat(news).singleElement().isInstanceOf(TabletNews.MayFallAsleep.class);
  }

  @Test
  void theBatteryIsAskedAtOnceAndThenEveryThirtySeconds() {
    TabletWatch watch = watch(HELD);
    watch.look();
    assertThat(asked).hasSize(1);
    power = new Power.Battery(80, false, true);
    for (int second = 1; second < 30; second++) {
      watch.look();
    }
    assertThat(asked).hasSize(1);
    watch.look();
    assertThat(asked).hasSize(2);
    assertThat(news).containsExactly(new TabletNews.OnBattery(80));
  }

  @Test
  void clocksAreLookedAtEverySecond() {
    TabletWatch watch = watch(HELD);
    watch.look();
    wall = wall.plusSeconds(120);
    watch.look();
    watch.look();

    assertThat(news)
        .singleElement()
        .matches(set -> ((TabletNews.ClockSet) set).by().toSeconds() == 120);
  }
}
