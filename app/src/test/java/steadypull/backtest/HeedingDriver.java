package steadypull.backtest;

import steadypull.advice.AdviceLine;
import steadypull.demo.road.Drive;

/**
 * A driver who does what the advice line says, some seconds later: lets speed fall, stops at the
 * next parking area and idles there for 3 min, and drives on as before once nothing is said and the
 * road is no longer steep. Takes no gears: the plant's gearbox shifts by itself.
 */
final class HeedingDriver {
  private static final int REACTS_AFTER_SECONDS = 4;
  private static final double PARKING_AHEAD_METRES = 1500;
  private static final int IDLES_SECONDS = 180;
  private static final double STEEP = 0.02;
  private static final double EASES_KM_H = 10;
  private static final double KILOMETRES_PER_HOUR = 3.6;

  private final Drive drive;
  private final double slowest;
  private int toldFor;
  private double parksAt = Double.NaN;
  private int idledFor;

  /**
   * A driver at the start.
   *
   * @param slowestKilometresPerHour the lowest advisable speed
   */
  HeedingDriver(Drive drive, double slowestKilometresPerHour) {
    this.drive = drive;
    slowest = slowestKilometresPerHour;
  }

  /** Reads the line, once a second. */
  void read(AdviceLine line) {
    if (!Double.isNaN(parksAt)) {
      park();
      return;
    }
    boolean isTold =
        line.state() == AdviceLine.State.ADVISE || line.state() == AdviceLine.State.ACT_NOW;
    toldFor = isTold ? toldFor + 1 : 0;
    if (isTold && toldFor > REACTS_AFTER_SECONDS) {
      heed(line);
    } else if (!isTold && drive.place().orElseThrow().gradePercent() / 100 < STEEP) {
      drive.goNoFasterThan(Drive.AS_FAST_AS_WISHED);
    }
  }

  private void heed(AdviceLine line) {
    if (line.easedSpeed().isPresent()) {
      limit(line.easedSpeed().getAsDouble());
    } else if (line.action().startsWith("Next parking area")) {
      parksAt = drive.state().motion().distance() + PARKING_AHEAD_METRES;
      limit(slowest);
    } else if (line.action().startsWith("Ease off") && toldFor == REACTS_AFTER_SECONDS + 1) {
      limit(drive.state().motion().speed() * KILOMETRES_PER_HOUR - EASES_KM_H);
    }
  }

  private void limit(double kilometresPerHour) {
    drive.goNoFasterThan(Math.max(slowest, kilometresPerHour) / KILOMETRES_PER_HOUR);
  }

  private void park() {
    if (drive.state().motion().distance() >= parksAt) {
      drive.goNoFasterThan(0);
      idledFor += drive.state().motion().speed() < 0.5 ? 1 : 0;
    }
    if (idledFor >= IDLES_SECONDS) {
      idledFor = 0;
      toldFor = 0;
      parksAt = Double.NaN;
      limit(slowest);
    }
  }
}
