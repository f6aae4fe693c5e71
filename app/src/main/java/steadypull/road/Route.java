package steadypull.road;

import java.util.List;
import java.util.Objects;

/**
 * A way somebody drove or means to drive. Immutable.
 *
 * @param name as its file calls it; may be empty
 * @param segments its unbroken stretches in the order of travel, one or more, with two points or
 *     more together
 */
public record Route(String name, List<RouteSegment> segments) {
  public Route {
    Objects.requireNonNull(name);
    segments = List.copyOf(segments);
    if (points(segments) < 2) {
      throw new IllegalArgumentException(
          "A route has two points or more, found " + points(segments));
    }
  }

  /** How many points there are, 2 or more. */
  public int size() {
    return points(segments);
  }

  /** The lengths of the segments together, metres; the breaks between them do not count. */
  public double lengthMetres() {
    return segments.stream().mapToDouble(RouteSegment::lengthMetres).sum();
  }

  private static int points(List<RouteSegment> segments) {
    return segments.stream().mapToInt(RouteSegment::size).sum();
  }
}
