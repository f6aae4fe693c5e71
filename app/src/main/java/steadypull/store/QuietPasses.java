package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/** Leaves quiet places out of passes over roads. Immutable. */
final class QuietPasses {
  private final List<QuietCircle> circles;

  QuietPasses(List<QuietPlace> places) {
    circles = places.stream().map(QuietCircle::new).toList();
  }

  /**
   * What may be learned of passes; each place cuts a pass in two. A point without a place, as in a
   * tunnel, is as quiet as the last one that had any.
   */
  List<RoadPass> outside(List<RoadPass> passes) {
    if (circles.isEmpty()) {
      return passes;
    }
    List<RoadPass> outside = new ArrayList<>();
    passes.forEach(pass -> cut(pass, outside));
    return List.copyOf(outside);
  }

  private void cut(RoadPass pass, List<RoadPass> outside) {
    List<PassPoint> open = new ArrayList<>();
    boolean isQuiet = false;
    for (PassPoint point : pass.points()) {
      isQuiet = point.place().map(this::isQuiet).orElse(isQuiet);
      if (isQuiet) {
        close(open, outside);
      } else {
        open.add(point);
      }
    }
    close(open, outside);
  }

  private static void close(List<PassPoint> open, List<RoadPass> outside) {
    if (!open.isEmpty()) {
      outside.add(new RoadPass(open));
      open.clear();
    }
  }

  private boolean isQuiet(PassPoint.Place place) {
    return circles.stream()
        .anyMatch(circle -> circle.holds(place.latitudeDegrees(), place.longitudeDegrees()));
  }
}
