package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;

/** The table of DEVELOPERS.md: what the look ahead would have said against what came. */
@Tag("bench")
class LookAheadTableBenchTest {
  private static final long SEED = 7;

  @Test
  void whatTheLookAheadSaidAgainstWhatCame() {
    List<Tour> tours = Country.larkmoor().tours();
    StringBuilder table = new StringBuilder();
    for (RoadsDriven.Taught taught : RoadsDriven.Taught.values()) {
      for (int passes : new int[] {1, 3, 6}) {
        RoadMemory memory = RoadsDriven.taught(taught, passes, tours);
        double strands = Strands.of(memory, tours).per100Kilometres();
        for (ReceiverQuality quality : List.of(ReceiverQuality.usual(), ReceiverQuality.poor())) {
          LookAheadFigures figures = new LookAheadFigures();
          tours.forEach(
              tour -> figures.add(TourPass.of(tour, SEED, quality), new RoadMatcher(memory)));
          String receiver = quality.equals(ReceiverQuality.usual()) ? "usual" : "poor";
          table
              .append(
                  figures.row(
                      String.format(
                          Locale.ROOT,
                          "%s | %d | %.1f | %s",
                          taught.name().toLowerCase(Locale.ROOT),
                          passes,
                          strands,
                          receiver)))
              .append('\n');
          assertThat(figures.knownShare()).isGreaterThan(0.8);
        }
      }
    }
    System.out.println(table);
  }
}
