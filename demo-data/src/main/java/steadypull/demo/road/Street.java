package steadypull.demo.road;

import java.util.List;

/**
 * A road of a country: a line on the ground through its bends and a profile of its own. Immutable.
 *
 * <p>Other than {@link Road} it may meet, cross and accompany others, and is driven in both
 * directions.
 */
public final class Street {
  private final String name;
  private final Curve curve;
  private final Road profile;
  private final double tunnelFrom;
  private final double tunnelTo;

  /**
   * A point of the flat ground.
   *
   * @param east m from the country's origin
   * @param north m from the country's origin
   */
  public record Spot(double east, double north) {
    /** Metres to another. */
    public double distanceTo(Spot other) {
      return Math.hypot(other.east - east, other.north - north);
    }
  }

  /**
   * Where a street is at one of its metres.
   *
   * @param spot on the middle line
   * @param heading radians counter-clockwise from east, in the direction of rising metres
   * @param gradePercent in the direction of rising metres, uphill positive
   * @param altitude m above mean sea level
   */
  public record Point(Spot spot, double heading, double gradePercent, double altitude) {}

  /**
   * A street.
   *
   * @param bends that its line runs through, two or more, none twice in a row
   * @param knots grades at rising distances, the first at 0 m, two or more
   * @param startAltitude m above mean sea level
   * @param tunnelFrom where a tunnel begins, m
   * @param tunnelTo where it ends, m; the same if there is none
   */
  Street(
      String name,
      List<Spot> bends,
      List<Road.Knot> knots,
      double startAltitude,
      double tunnelFrom,
      double tunnelTo) {
    this.name = name;
    this.curve = new Curve(bends);
    this.profile = new Road(name, knots, 0, 0, startAltitude);
    this.tunnelFrom = tunnelFrom;
    this.tunnelTo = tunnelTo;
  }

  /** Its invented name. */
  public String name() {
    return name;
  }

  /** Length of its line, m. */
  public double length() {
    return curve.length();
  }

  /** The point at a distance from its beginning, 0 m to its length; beyond, the nearest end. */
  public Point at(double metres) {
    double within = Math.clamp(metres, 0, length());
    Road.Place place = profile.at(within);
    return new Point(
        curve.spot(within), curve.heading(within), place.gradePercent(), place.altitude());
  }

  boolean isInTunnel(double metres) {
    return metres >= tunnelFrom && metres < tunnelTo;
  }
}
