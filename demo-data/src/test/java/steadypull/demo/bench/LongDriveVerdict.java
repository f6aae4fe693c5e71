package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;

/**
 * Whether a long drive with faults gave the right number of readings, measured by a calm one.
 *
 * <p>At most: what the calm drive gives in the same time, one in a hundred more for rounding, and
 * for every fault that takes something away three readings more, because everything is asked once
 * after every new start and a fault may lead to more than one.
 *
 * <p>At least: what the calm drive gives in the time that is left if every such fault takes half a
 * minute: six seconds at most for itself, the rest for noticing, starting the adapter, finding the
 * vehicle, or half a minute of single requests at half the pace. Beside that, the last ten seconds
 * of every minute are as if nothing had been, within a tenth, but for some minutes after flipped
 * bits.
 */
record LongDriveVerdict(LongDrive drive, LongDriveLog calm, LongDriveLog log) {
  private static final double AWAY_SECONDS = 30;
  private static final int MORE_PER_FAULT = 3;
  private static final double ROUNDING = 0.01;
  private static final int CALM_MINUTE = 3;

  /**
   * A frame on CAN carries no check that an adapter prints. A vehicle that is found anew while bits
   * are wrong may seem to support less than it does until it is found once more, here by the faults
   * of the next minutes.
   */
  private static final double WITH_WRONG_MAPS = 0.4;

  private static final int MINUTES_WITH_WRONG_MAPS = 3;

  /** Runs a drive with faults beside a calm one of the same seed. */
  static LongDriveVerdict of(LongDrive drive) {
    LongDrive without =
        new LongDrive(Duration.ofMinutes(CALM_MINUTE + 2), drive.seed(), drive.protocol(), false);
    return new LongDriveVerdict(
        drive, new LongDriveLog(without).run(), new LongDriveLog(drive).run());
  }

  void assertRightNumbers() {
    double seconds = drive.duration().toSeconds();
    double share = seconds / calm.seconds();
    double left = (seconds - AWAY_SECONDS * drive.harmfulFaults()) / calm.seconds();
    int more = MORE_PER_FAULT * drive.harmfulFaults();
    assertThat(log.totals().keySet()).isEqualTo(calm.totals().keySet());
    calm.totals()
        .forEach(
            (key, count) ->
                assertThat((double) log.totals().getOrDefault(key, 0))
                    .as("readings of %s, seed %d", key, drive.seed())
                    .isBetween(
                        count * left * (1 - ROUNDING), count * share * (1 + ROUNDING) + more));
  }

  void assertEveryMinuteEndsWell() {
    double usual = calm.inLastSeconds(CALM_MINUTE);
    for (int minute = 1; minute < drive.duration().toMinutes(); minute++) {
      assertThat((double) log.inLastSeconds(minute))
          .as("readings at the end of minute %d, %s", minute, LongDrive.kindOf(minute))
          .isBetween(usual * leastShareAt(minute), usual * 1.1);
    }
  }

  /** What is left at least of the usual readings when a fault has passed. */
  static double leastShareAfter(Fault.Kind kind) {
    return kind == Fault.Kind.FLIPPED_BITS ? WITH_WRONG_MAPS : 0.9;
  }

  private static double leastShareAt(int minute) {
    double least = leastShareAfter(LongDrive.kindOf(minute));
    for (int earlier = 1; earlier <= MINUTES_WITH_WRONG_MAPS; earlier++) {
      least = Math.min(least, leastShareAfter(LongDrive.kindOf(Math.max(0, minute - earlier))));
    }
    return least;
  }

  void assertNothingUntrueAndNothingOpen() {
    assertThat(log.untrue()).as(log.firstUntrue()).isZero();
    assertThat(log.compared()).isPositive();
    assertThat(log.links().mostOpen()).isEqualTo(1);
    assertThat(log.links().openNow()).isZero();
  }

  /** What the drive came to, as lines for people. */
  String figures() {
    double share = drive.duration().toSeconds() / (double) calm.seconds();
    double expected = calm.total() * share;
    return """
    %.1f h of link over %s, seed %d, %d faults of which %d take readings away
    readings      %d, %.1f %% of a calm drive's; %d compared with the sensors, %d untrue
    connections   %d; ports opened %d, at once %d, open at the end %d
    """
        .formatted(
            drive.duration().toMinutes() / 60.0,
            drive.protocol().words(),
            drive.seed(),
            drive.faults().size(),
            drive.harmfulFaults(),
            log.total(),
            100 * log.total() / expected,
            log.compared(),
            log.untrue(),
            log.connections(),
            log.links().opened(),
            log.links().mostOpen(),
            log.links().openNow());
  }
}
