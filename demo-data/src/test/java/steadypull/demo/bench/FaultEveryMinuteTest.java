package steadypull.demo.bench;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Half an hour with every kind of fault once: the small brother of the soak. */
@Timeout(300)
class FaultEveryMinuteTest {
  private static final Duration SPAN = Duration.ofMinutes(2 + Fault.Kind.values().length);

  @Test
  void everyMinuteEndsAsIfNothingHadBeenAndNothingUntrueIsTold() {
    LongDriveVerdict verdict =
        LongDriveVerdict.of(new LongDrive(SPAN, 1, BusProtocol.CAN_11_500, true));

    verdict.assertEveryMinuteEndsWell();
    verdict.assertRightNumbers();
    verdict.assertNothingUntrueAndNothingOpen();
  }
}
