package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Each learnt figure by itself over 104 plants; too long for every build. */
@Tag("bench")
class IdentificationBenchTest {
  private static final List<String> FIGURES =
      List.of("circuit J/K", "circuit W/K", "engine J/K", "engine W/K");

  @Test
  void theIntervalOfEachFigureHoldsTheTruthAtLeastFourTimesInFive() {
    List<PlantBeliefs> plants = IdentificationOverPlantsTest.drive(2001, 104, 1500);
    for (int figure = 0; figure < FIGURES.size(); figure++) {
      var live = IdentificationOverPlantsTest.held(plants, PlantBeliefs::live, figure, 1);
      var whole = IdentificationOverPlantsTest.held(plants, PlantBeliefs::whole, figure, 1);
      System.out.printf(
          "%-12s live %.2f, whole trip %.2f of %d%n",
          FIGURES.get(figure), live.share(), whole.share(), live.all());
      assertThat(live.share()).as(FIGURES.get(figure)).isGreaterThanOrEqualTo(0.80);
      assertThat(whole.share()).as(FIGURES.get(figure)).isGreaterThanOrEqualTo(0.80);
    }
  }
}
