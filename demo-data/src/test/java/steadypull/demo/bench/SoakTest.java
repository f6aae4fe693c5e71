package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

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
    soak(Duration.ofHours(Long.getLong("soak.hours", 24)), BusProtocol.CAN_11_500);
  }

  @ParameterizedTest
  @EnumSource(names = {"J1850_VPW", "ISO_9141", "ISO_14230_FAST", "CAN_29_250"})
  void otherBusesBearAFaultEveryMinuteToo(BusProtocol protocol) {
    soak(Duration.ofHours(2), protocol);
  }

  private static void soak(Duration duration, BusProtocol protocol) {
    LongDrive drive = new LongDrive(duration, Long.getLong("soak.seed", 1), protocol, true);
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
