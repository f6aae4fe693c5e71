package steadypull.demo.road;

import java.util.List;

/**
 * An invented road: grade by distance, linear between knots, level after the last; positions in the
 * open ocean, where no road is. Immutable.
 *
 * @param name invented
 * @param knots at rising distances, the first at 0 m, at least two
 * @param startLatitude degrees, -60 to 60
 * @param startLongitude degrees, -180 to 180
 * @param startAltitude m above mean sea level
 */
public record Road(
    String name,
    List<Knot> knots,
    double startLatitude,
    double startLongitude,
    double startAltitude)
    implements Track {
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km

  /**
   * The grade at one place.
   *
   * @param metres from the start
   * @param gradePercent uphill positive, -15 to 15
   */
  public record Knot(double metres, double gradePercent) {
    public Knot {
      if (!(metres >= 0 && Math.abs(gradePercent) <= 15)) {
        throw new IllegalArgumentException(
            "A knot lies at 0 m or later with -15 to 15 %%, found %s m, %s %%"
                .formatted(metres, gradePercent));
      }
    }
  }

  /**
   * A place on the road.
   *
   * @param metres from the start
   * @param gradePercent uphill positive
   * @param altitude m above mean sea level
   * @param latitude degrees
   * @param longitude degrees
   */
  public record Place(
      double metres, double gradePercent, double altitude, double latitude, double longitude) {}

  public Road {
    knots = List.copyOf(knots);
    if (knots.size() < 2 || knots.getFirst().metres() != 0) {
      throw new IllegalArgumentException("A road has two knots or more, the first at 0 m");
    }
    for (int i = 1; i < knots.size(); i++) {
      if (!(knots.get(i).metres() > knots.get(i - 1).metres())) {
        throw new IllegalArgumentException(
            "Distances of knots rise, found %s after %s".formatted(knots.get(i), knots.get(i - 1)));
      }
    }
  }

  @Override
  public Place at(double metres) {
    double gained = 0;
    Knot last = knots.getFirst();
    for (Knot next : knots.subList(1, knots.size())) {
      if (metres < next.metres()) {
        double share = (metres - last.metres()) / (next.metres() - last.metres());
        double grade = last.gradePercent() + share * (next.gradePercent() - last.gradePercent());
        gained += (metres - last.metres()) * (last.gradePercent() + grade) / 200;
        return place(metres, grade, gained);
      }
      gained += (next.metres() - last.metres()) * (last.gradePercent() + next.gradePercent()) / 200;
      last = next;
    }
    return place(metres, 0, gained);
  }

  /** The road winds gently around a line to the east, so that no two places are the same. */
  private Place place(double metres, double grade, double gained) {
    double aside = 400 * Math.sin(metres / 1900) + 120 * Math.sin(metres / 430);
    double narrowing = Math.cos(Math.toRadians(startLatitude));
    return new Place(
        metres,
        grade,
        startAltitude + gained,
        startLatitude + aside / METRES_PER_DEGREE,
        startLongitude + metres * 0.97 / (METRES_PER_DEGREE * narrowing));
  }

  /** Length up to the last knot, m. */
  @Override
  public double length() {
    return knots.getLast().metres();
  }
}
