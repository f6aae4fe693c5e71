package steadypull.demo.road;

import java.util.List;

/**
 * A way through a country: stretches of streets, one after the other, on the left-hand lane.
 * Immutable.
 *
 * @param name invented
 * @param country whose streets they are
 * @param stretches one or more, each beginning where the one before ends
 */
public record Tour(String name, Country country, List<Stretch> stretches) implements Track {
  /** From the middle line to the middle of the lane, m (common practice, no source). */
  private static final double LANE_METRES = 1.8;

  /** Streets that meet do so within the junction's own size. */
  private static final double JUNCTION_METRES = 30;

  /**
   * A part of a street, driven from one metre to another; towards its beginning if the second is
   * smaller.
   *
   * @param street that is driven
   * @param from m of the street
   * @param to m of the street, another than from
   */
  public record Stretch(Street street, double from, double to) {
    public Stretch {
      if (!(from >= 0 && to >= 0 && Math.max(from, to) <= street.length() && from != to)) {
        throw new IllegalArgumentException(
            "A stretch of %s lies between 0 and %.0f m, found %s to %s"
                .formatted(street.name(), street.length(), from, to));
      }
    }

    double length() {
      return Math.abs(to - from);
    }

    double streetMetres(double driven) {
      return to > from ? from + driven : from - driven;
    }

    private Street.Point at(double driven) {
      return street.at(streetMetres(driven));
    }
  }

  public Tour {
    stretches = List.copyOf(stretches);
    if (stretches.isEmpty()) {
      throw new IllegalArgumentException("A tour has a stretch or more");
    }
    for (int i = 1; i < stretches.size(); i++) {
      Stretch before = stretches.get(i - 1);
      double apart = before.at(before.length()).spot().distanceTo(stretches.get(i).at(0).spot());
      if (apart > JUNCTION_METRES) {
        throw new IllegalArgumentException(
            "Stretch %d of %s begins %.0f m from where the one before ends"
                .formatted(i, name, apart));
      }
    }
  }

  @Override
  public double startAltitude() {
    return stretches.getFirst().at(0).altitude();
  }

  @Override
  public double length() {
    return stretches.stream().mapToDouble(Stretch::length).sum();
  }

  @Override
  public Road.Place at(double metres) {
    Driven here = driven(metres);
    Street.Point point = here.stretch().at(here.metres());
    boolean isForward = here.stretch().to() > here.stretch().from();
    double left = point.heading() + (isForward ? Math.PI / 2 : -Math.PI / 2);
    Street.Spot lane =
        new Street.Spot(
            point.spot().east() + LANE_METRES * Math.cos(left),
            point.spot().north() + LANE_METRES * Math.sin(left));
    return new Road.Place(
        metres,
        isForward ? point.gradePercent() : -point.gradePercent(),
        point.altitude(),
        country.latitude(lane),
        country.longitude(lane));
  }

  @Override
  public boolean isInTunnel(double metres) {
    Driven here = driven(metres);
    return here.stretch().street().isInTunnel(here.stretch().streetMetres(here.metres()));
  }

  /** The speeds of a driver who wishes for one, m/s, and slows down for bends. */
  public List<Course.Wish> speeds(double metresPerSecond) {
    return BendSpeeds.along(this, metresPerSecond);
  }

  private record Driven(Stretch stretch, double metres) {}

  private Driven driven(double metres) {
    double left = metres;
    for (Stretch stretch : stretches) {
      if (left < stretch.length()) {
        return new Driven(stretch, left);
      }
      left -= stretch.length();
    }
    Stretch last = stretches.getLast();
    return new Driven(last, last.length());
  }
}
