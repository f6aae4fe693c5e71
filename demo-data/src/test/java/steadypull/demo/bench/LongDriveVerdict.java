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
 * of every minute are as if nothing had been, within a tenth.
 */
record LongDriveVerdict(LongDrive drive, LongDriveLog calm, LongDriveLog log) {
  private static final double AWAY_SECONDS = 30;
  private static final int MORE_PER_FAULT = 3;
  private static final double ROUNDING = 0.01;
  private static final int CALM_MINUTE = 3;

  /** What is left at least of the usual readings when a fault has passed. */
  static final double LEAST_SHARE = 0.9;

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
          .isBetween(usual * LEAST_SHARE, usual * 1.1);
    }
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
