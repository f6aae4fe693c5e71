package steadypull.road.memory;

import java.time.LocalDate;
import java.util.List;
import steadypull.demo.road.Tour;
import steadypull.road.RoadPass;

/** Memories of tours that were driven. */
final class RoadsDriven {
  static final LocalDate DAY = LocalDate.of(2026, 5, 1);

  private static final long FIRST_SEED = 100;

  private RoadsDriven() {}

  /** A memory after each of the tours was driven so often, each time by another vehicle. */
  static RoadMemory times(int passes, Tour... tours) {
    return times(passes, List.of(tours));
  }

  static RoadMemory times(int passes, List<Tour> tours) {
    RoadMemory memory = new RoadMemory(RoadMemory.shelfInMemory());
    for (int pass = 0; pass < passes; pass++) {
      for (Tour tour : tours) {
        learn(memory, TourPass.of(tour, FIRST_SEED + pass));
      }
    }
    return memory;
  }

  static void learn(RoadMemory memory, TourPass driven) {
    for (RoadPass pass : driven.passes()) {
      memory.learn(pass, DAY);
    }
  }
}
