package steadypull.road.memory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Cuts a pass where it comes to a road that it drove before, the same way, so that the second lap
 * finds what the first one taught. Stateless.
 */
final class Laps {
  /** Cells of 0.0005 degrees and eighths of the compass: some 50 m. */
  private static final double CELLS_PER_DEGREE = 2000;

  /** Sooner than that nobody comes back the same way, m. */
  private static final double SHORTEST_METRES = 400;

  private record Cell(long row, long column, long eighth) {}

  private Laps() {}

  static List<PassCurve> of(PassCurve curve) {
    List<PassCurve> laps = new ArrayList<>();
    Map<Cell, Double> seen = new HashMap<>();
    List<PassCurve.Spot> spots = curve.spots();
    int from = 0;
    for (int i = 0; i < spots.size(); i++) {
      PassCurve.Spot spot = spots.get(i);
      Double before = seen.put(cell(spot), spot.metres());
      boolean isAgain = before != null && spot.metres() - before > SHORTEST_METRES;
      if (isAgain && i - from > 1 && spots.size() - i > 1) {
        laps.add(curve.part(from, i + 1));
        from = i;
        seen.clear();
      }
    }
    laps.add(curve.part(from, spots.size()));
    return laps;
  }

  private static Cell cell(PassCurve.Spot spot) {
    return new Cell(
        (long) Math.floor(spot.latitudeDegrees() * CELLS_PER_DEGREE),
        (long) Math.floor(spot.longitudeDegrees() * CELLS_PER_DEGREE),
        Math.floorMod(Math.round(spot.heading() / (Math.PI / 4)), 8L));
  }
}
