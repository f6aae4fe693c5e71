package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The reader through every kind of fault: it goes on afterwards and tells nothing untrue. */
@Timeout(300)
class EveryFaultPassesTest {
  private static final double START = 300;
  private static final String DRIVE = "demo:long-hot-grade?speed=max&seed=9&start=300";

  /** Nothing in the text of a CAN frame tells that one of its digits is another. */
  private static final Set<Fault.Kind> UNTELLABLE = Set.of(Fault.Kind.FLIPPED_BITS);

  @ParameterizedTest
  @EnumSource
  void readingsAreTrueDuringAFaultAndComeAsBeforeAfterwards(Fault.Kind kind) {
    ReaderLog log = ReaderLog.read(DRIVE + "&fault=" + kind.word() + "@40-50", 130);

    int before = log.readingsBetween(20, 38).size();
    assertThat(before).isGreaterThan(150);
    int least = (int) (before * LongDriveVerdict.LEAST_SHARE);
    assertThat(log.readingsBetween(112, 130).size()).isBetween(least, before * 11 / 10);
    assertThat(log.readings).allMatch(reading -> reading.controlUnit().matches("7E[89]"));
    if (!UNTELLABLE.contains(kind)) {
      assertThat(TrueReadings.compare(log.readings, "long-hot-grade", 9, START)).isPositive();
    }
  }
}
