package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A day of driving with a fault every minute, in compressed time. Run by {@code mvn -Psoak}; {@code
 * -Dsoak.hours=2} makes it shorter, {@code -Dsoak.seed=7} another day.
 */
@Tag("soak")
class SoakTest {
  /** Heap that may come to stay between hour 1 and the last: collections are never exact. */
  private static final long MOST_GROWTH_BYTES = 2_000_000;

  @Test
  void dayWithAFaultEveryMinuteLosesNothingThatTheFaultsLeaveAndLeaksNothing() {
    LongDrive drive =
        new LongDrive(
            Duration.ofHours(Long.getLong("soak.hours", 24)), Long.getLong("soak.seed", 1), true);
    int threads = ManagementFactory.getThreadMXBean().getThreadCount();
    LongDriveVerdict verdict = LongDriveVerdict.of(drive);
    int threadsAfter = ManagementFactory.getThreadMXBean().getThreadCount();
    List<Long> heap = verdict.log().heapByHour();
    long growth = heap.getLast() - heap.getFirst();
    System.out.printf(
        "%s%-13s %d B after the first hour, %+d B until the last%nthreads       %d before, %d"
            + " after%n",
        verdict.figures(), "heap", heap.getFirst(), growth, threads, threadsAfter);

    verdict.assertEveryMinuteEndsWell();
    verdict.assertRightNumbers();
    verdict.assertNothingUntrueAndNothingOpen();
    assertThat(growth).as("heap by hour %s", heap).isLessThan(MOST_GROWTH_BYTES);
    assertThat(threadsAfter).isLessThanOrEqualTo(threads);
  }
}
