package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.demo.season.Season;
import steadypull.demo.season.SeasonTrip;

/** Prints how often the bands held over the whole demo season, by channel and horizon. */
@Tag("bench")
class SeasonBandsBenchTest {
  @Test
  void theWholeSeason() throws Exception {
    SeasonBands bands = new SeasonBands();
    for (SeasonTrip trip : Season.of(1).trips()) {
      bands.drive(trip);
    }
    System.out.println(bands);
    assertThat(bands.of("").share(0)).isBetween(0.75, 0.85);
  }
}
