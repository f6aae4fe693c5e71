package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import steadypull.advice.AdviceLine;
import steadypull.drive.DriveSnapshot;

class SnapshotRelayTest {
  private final List<DriveSnapshot> shown = new ArrayList<>();
  private final AtomicLong nanos = new AtomicLong(1_000_000_000_000L);
  private final SnapshotRelay relay = Fx.call(() -> new SnapshotRelay(shown::add, nanos::get));
  private final DriveSnapshot calm = Moments.calm();

  @Test
  void newestWinsWhereSeveralArriveBeforeThePulse() {
    DriveSnapshot last = Moments.calm();
    Fx.run(
        () -> {
          for (int count = 0; count < 100; count++) {
            relay.accept(calm);
          }
          relay.accept(last);
        });
    Fx.settle();
    assertThat(shown).hasSize(1).first().isSameAs(last);
  }

  @Test
  void valuesChangeAtMostTwiceASecond() {
    relay.accept(calm);
    Fx.settle();
    for (int tick = 1; tick <= 9; tick++) {
      nanos.addAndGet(100_000_000L);
      relay.accept(calm);
      Fx.settle();
    }
    assertThat(shown).hasSize(2);
  }

  @Test
  void changeOfTheAdviceShowsAtOnce() {
    relay.accept(calm);
    Fx.settle();
    DriveSnapshot advise = Moments.advise(new AdviceLine.Response.None());
    relay.accept(advise);
    Fx.settle();
    DriveSnapshot answered = Moments.advise(new AdviceLine.Response.Acknowledged(Moments.NOW));
    relay.accept(answered);
    Fx.settle();
    assertThat(shown).containsExactly(calm, advise, answered);
  }

  @Test
  void heldSnapshotDoesNotStandInTheWayOfAnUrgentOne() {
    relay.accept(calm);
    Fx.settle();
    relay.accept(calm);
    Fx.settle();
    DriveSnapshot urgent = Moments.actNow(new AdviceLine.Response.None());
    relay.accept(urgent);
    Fx.settle();
    assertThat(shown).contains(urgent);
    assertThat(shown.getLast()).isSameAs(urgent);
  }
}
