package steadypull.demo.season;

import java.util.List;
import java.util.stream.Stream;
import steadypull.demo.road.Road;

/**
 * A road that leaves the workshop's town in a direction of its own. Immutable.
 *
 * @param key lower-case word of outings
 * @param road profile, first knot in the town
 * @param headingDegrees direction of the road as a whole, clockwise from north, 0 to 360
 * @param tunnelFrom m from the town where no satellite is seen
 * @param tunnelTo where the tunnel ends, m; the same as its beginning if there is none
 */
record SeasonRoad(
    String key, Road road, double headingDegrees, double tunnelFrom, double tunnelTo) {
  /** The town reaches so far, m. */
  static final double TOWN_METRES = 1800;

  // Withy Quay lies in the open ocean, a thousand kilometres from any coast.
  private static final double LATITUDE = 33.5;
  private static final double LONGITUDE = -48;
  private static final double ALTITUDE = 60;

  static final List<SeasonRoad> ALL =
      List.of(
          new SeasonRoad("ladder", tallowLadder(), 35, 9200, 9800),
          new SeasonRoad("grade", sevenstoneGrade(), 118, 0, 0),
          new SeasonRoad("hill", marlHill(), 190, 0, 0),
          new SeasonRoad("shelf", emberShelf(), 262, 0, 0),
          new SeasonRoad("flats", brackwaterFlats(), 320, 0, 0));

  static SeasonRoad named(String key) {
    return ALL.stream()
        .filter(each -> each.key.equals(key))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("No road is called " + key));
  }

  /** The place at a distance from the town, m. */
  Road.Place at(double metres) {
    Road.Place place = road.at(metres);
    double turn = Math.toRadians(headingDegrees - 90); // the profile's road leads east
    double narrowing = Math.cos(Math.toRadians(LATITUDE));
    double north = place.latitude() - LATITUDE;
    double east = (place.longitude() - LONGITUDE) * narrowing;
    return new Road.Place(
        metres,
        place.gradePercent(),
        place.altitude(),
        LATITUDE + north * Math.cos(turn) - east * Math.sin(turn),
        LONGITUDE + (north * Math.sin(turn) + east * Math.cos(turn)) / narrowing);
  }

  boolean isInTunnel(double metres) {
    return metres >= tunnelFrom && metres < tunnelTo;
  }

  double length() {
    return road.length();
  }

  private static Road tallowLadder() {
    return road(
        "Tallow Ladder",
        "0 0.2, 1800 0.5, 3000 1.5, 4200 -0.8, 5200 1, 5800 5, 7500 6.2, 11500 6.6, 14800 6.2,"
            + " 16400 5.4, 17200 0.3, 18500 0");
  }

  private static Road sevenstoneGrade() {
    return road(
        "Sevenstone Grade",
        "0 0.1, 1900 0.4, 4000 1.2, 5000 3.2, 9000 3.8, 14000 3.6, 15500 1, 17000 0");
  }

  private static Road marlHill() {
    return road(
        "Marl Hill", "0 0.2, 1700 0.3, 2600 1, 3200 7.5, 4300 9.2, 5400 8.4, 6000 2, 6600 0");
  }

  private static Road emberShelf() {
    return road(
        "Ember Shelf",
        "0 0.2, 1800 0.6, 3500 4.8, 6500 5.4, 7500 0.5, 9500 -0.4, 10500 6.8, 13500 7.1,"
            + " 14500 1, 15500 0");
  }

  private static Road brackwaterFlats() {
    return road(
        "Brackwater Flats",
        "0 0, 4000 0.6, 9000 -0.5, 14000 0.8, 20000 -0.7, 27000 0.4, 34000 -0.3, 41000 0.5,"
            + " 46000 0");
  }

  /** Knots as pairs of metres and per cent, apart by commas. */
  private static Road road(String name, String knots) {
    List<Road.Knot> pairs = Stream.of(knots.split(", ", -1)).map(SeasonRoad::knot).toList();
    return new Road(name, pairs, LATITUDE, LONGITUDE, ALTITUDE);
  }

  private static Road.Knot knot(String pair) {
    int space = pair.indexOf(' ');
    return new Road.Knot(
        Double.parseDouble(pair.substring(0, space)),
        Double.parseDouble(pair.substring(space + 1)));
  }
}
