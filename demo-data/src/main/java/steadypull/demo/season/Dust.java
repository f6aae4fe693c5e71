package steadypull.demo.season;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** How dust closes a radiator's face: evenly from day to day, until it is washed out. */
final class Dust {
  private static final LocalDate CLEANED = LocalDate.of(2026, 6, 29);

  private static final LocalDate CLEAN = LocalDate.of(2026, 3, 1);
  private static final double ALWAYS = 0.02; // share of the face
  private static final double PER_DAY = 0.0038; // harvest roads (estimated)

  private Dust() {}

  /** Share of the face that is closed on a day of the season. */
  static double closedShare(LocalDate day) {
    LocalDate since = day.isBefore(CLEANED) ? CLEAN : CLEANED;
    return ALWAYS + PER_DAY * ChronoUnit.DAYS.between(since, day);
  }
}
