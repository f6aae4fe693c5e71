package steadypull.road.memory;

import java.time.LocalDate;
import java.util.List;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.RoadPass;

/** Memories of tours that were driven. */
final class RoadsDriven {
  static final LocalDate DAY = LocalDate.of(2026, 5, 1);

  private static final long FIRST_SEED = 100;

  /** By which receivers a memory was taught; mixed: every other drive by a poor one. */
  enum Taught {
    USUAL,
    MIXED,
    POOR;

    private ReceiverQuality quality(int drive) {
      return switch (this) {
        case USUAL -> ReceiverQuality.usual();
        case MIXED -> drive % 2 == 0 ? ReceiverQuality.usual() : ReceiverQuality.poor();
        case POOR -> ReceiverQuality.poor();
      };
    }
  }

  private RoadsDriven() {}

  /** A memory after each of the tours was driven so often, each time by another vehicle. */
  static RoadMemory times(int passes, Tour... tours) {
    return times(passes, List.of(tours));
  }

  static RoadMemory times(int passes, List<Tour> tours) {
    return taught(Taught.USUAL, passes, tours);
  }

  static RoadMemory taught(Taught taught, int passes, List<Tour> tours) {
    RoadMemory memory = new RoadMemory(RoadMemory.shelfInMemory());
    for (int pass = 0; pass < passes; pass++) {
      for (int tour = 0; tour < tours.size(); tour++) {
        ReceiverQuality quality = taught.quality(pass + tour);
        learn(memory, TourPass.of(tours.get(tour), FIRST_SEED + pass, quality));
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
