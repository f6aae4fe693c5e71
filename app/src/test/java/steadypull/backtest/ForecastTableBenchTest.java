package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.review.PlainForecaster;

/**
 * How early and how truly a derate is foretold: simpler forecasters, and ours with the road unknown
 * and known, in worlds that nothing was tuned in. Prints the tables of DEVELOPERS.md.
 */
@Tag("bench")
class ForecastTableBenchTest {
  /** Worlds up to 360 are for looking into; these are held out. */
  private static final int FIRST = Integer.getInteger("first", 361);

  private static final int WORLDS = Integer.getInteger("worlds", 60);

  @Test
  void withTheRoadKnownAdviceIsEarlierAndTruerThanAnythingSimpler() {
    ForecastTable table = new ForecastTable();
    for (int number = FIRST; number < FIRST + WORLDS; number++) {
      table.drive(TowingWorld.of(number));
    }
    System.out.print(table);
    AdviceScore known = table.ours(WorldDrive.Road.KNOWN);
    AdviceScore unknown = table.ours(WorldDrive.Road.UNKNOWN);
    assertThat(known.lead(0.5)).isGreaterThan(unknown.lead(0.5));
    assertThat(known.falsePerHour()).isLessThan(unknown.falsePerHour());
    for (PlainForecaster watch : PlainForecaster.values()) {
      assertThat(table.plain(watch).lead(0.5)).isLessThan(known.lead(0.5));
    }
  }
}
