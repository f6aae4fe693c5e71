package steadypull;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.advice.RuleSet;
import steadypull.demo.season.SeasonTrip;

/** The whole demo season held to the figures of alarm management, with the table of the guide. */
@Tag("bench")
class AlarmLoadBenchTest {
  @Test
  void theSeasonKeepsToTheFigures() throws Exception {
    AlarmLoad load = new AlarmLoad(RuleSet.shipped());
    for (SeasonTrip trip : AlarmSeason.trips()) {
      AlarmSeason.drive(trip, load);
    }
    System.out.println(load.table());
    AlarmSeason.check(load);
  }
}
