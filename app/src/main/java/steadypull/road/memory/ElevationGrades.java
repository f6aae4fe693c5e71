package steadypull.road.memory;

import java.util.Arrays;
import java.util.Optional;
import steadypull.road.RouteSegment;

/**
 * Grades from a route's elevations: the slope of the straight line that fits best around a place
 * (least squares), with the error that its points show. Immutable.
 */
final class ElevationGrades {
  /** Elevations within so many metres of a place tell its grade. */
  private static final double AROUND_METRES = 150;

  /** Points that lie closer together tell nothing of a slope, m. */
  private static final double SHORTEST_METRES = 40;

  /** Between two elevations farther apart than that nobody knows the road, m. */
  private static final double LONGEST_GAP_METRES = 800;

  /** No file's elevation is surer than that, m (estimated). */
  private static final double LEAST_ERROR_METRES = 2.5;

  private final double[] metres;
  private final double[] elevations;

  /**
   * What is told at a place.
   *
   * @param grade rise over run, a fraction
   * @param error its standard deviation, a fraction, above 0
   * @param heightMetres above sea level
   */
  record Slope(double grade, double error, double heightMetres) {}

  private ElevationGrades(double[] metres, double[] elevations) {
    this.metres = metres;
    this.elevations = elevations;
  }

  static ElevationGrades of(RouteSegment segment) {
    double[] metres = new double[segment.size()];
    double[] elevations = new double[segment.size()];
    int size = 0;
    for (int i = 0; i < segment.size(); i++) {
      double here = segment.distanceMetres(i);
      if (segment.point(i).elevationMetres().isPresent()
          && (size == 0 || here > metres[size - 1])) {
        metres[size] = here;
        elevations[size++] = segment.point(i).elevationMetres().getAsDouble();
      }
    }
    return new ElevationGrades(Arrays.copyOf(metres, size), Arrays.copyOf(elevations, size));
  }

  /** The slope at so many metres of the segment, or empty where elevations are missing. */
  Optional<Slope> at(double here) {
    int found = Arrays.binarySearch(metres, here);
    int after = found >= 0 ? found : -found - 1;
    int before = found >= 0 ? found : after - 1;
    if (before < 0
        || after >= metres.length
        || metres[after] - metres[before] > LONGEST_GAP_METRES) {
      return Optional.empty();
    }
    return fit(here, before, after);
  }

  private Optional<Slope> fit(double here, int before, int after) {
    int first = before;
    int last = after;
    while (first > 0 && isNear(first - 1, first, here, metres[first])) {
      first--;
    }
    while (last + 1 < metres.length && isNear(last + 1, last, here, metres[last])) {
      last++;
    }
    double span = metres[last] - metres[first];
    if (last == first || span < SHORTEST_METRES) {
      return Optional.empty();
    }
    double middle = 0;
    double height = 0;
    int count = last - first + 1;
    for (int i = first; i <= last; i++) {
      middle += metres[i] / count;
      height += elevations[i] / count;
    }
    double squares = 0;
    double products = 0;
    for (int i = first; i <= last; i++) {
      squares += (metres[i] - middle) * (metres[i] - middle);
      products += (metres[i] - middle) * (elevations[i] - height);
    }
    double grade = products / squares;
    double left = 0;
    for (int i = first; i <= last; i++) {
      double beside = elevations[i] - height - grade * (metres[i] - middle);
      left += beside * beside;
    }
    double scatter = count > 2 ? Math.sqrt(left / (count - 2)) : 0;
    // neighbouring elevations err alike, so only the two ends count as told apart
    double error = Math.sqrt(2) * Math.max(LEAST_ERROR_METRES, scatter) / span;
    return Optional.of(new Slope(grade, error, height + grade * (here - middle)));
  }

  /** Whether a point belongs to the fit: near the place, or needed for a slope at all. */
  private boolean isNear(int candidate, int edge, double here, double edgeMetres) {
    double gap = Math.abs(metres[candidate] - metres[edge]);
    return gap <= LONGEST_GAP_METRES
        && (Math.abs(metres[candidate] - here) <= AROUND_METRES
            || Math.abs(edgeMetres - here) < SHORTEST_METRES / 2);
  }
}
