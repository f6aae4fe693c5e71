package steadypull.demo.road;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Streets that meet, cross and accompany each other, on flat ground in the open ocean, where no
 * road is. Immutable; streets are compared by identity.
 */
public final class Country {
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km

  // Larkmoor lies a thousand kilometres from any coast.
  private static final double LATITUDE = -41.5;
  private static final double LONGITUDE = -118;
  private static final double NARROWING = Math.cos(Math.toRadians(LATITUDE));

  /**
   * Where the old road leaves the main one, and where it turns away from it, m of the main road.
   */
  private static final double OLD_ROAD_LEAVES = 5000;

  private static final double OLD_ROAD_TURNS_AWAY = 8400;
  private static final double FELL_LEAVES = 14_000;
  private static final double LANE_CROSSES = 8000;

  private static final Country LARKMOOR = new Country();

  private final Street harrow;
  private final Street oldHarrow;
  private final Street bramble;
  private final Street fell;
  private final Street quarry;

  private Country() {
    harrow =
        new Street(
            "Harrow Road",
            spots(
                "0 0, 1500 300, 3200 -200, 5000 100, 6800 700, 8600 500, 10400 -300, 12200 -100,"
                    + " 14000 600, 15600 1600, 17400 1900, 19200 1200, 21500 900, 24000 1200"),
            knots(
                "0 0.4, 3000 1.0, 4600 -0.8, 5200 2, 6000 5.4, 7400 5.8, 9400 5.2, 10200 0.6,"
                    + " 11200 -3.4, 13000 -2.8, 13800 0.5, 14600 4, 15200 6.4, 18600 6.7, 19600 1,"
                    + " 21000 -4.2, 23000 -1, 24500 0"),
            220,
            12_000,
            12_900);
    oldHarrow =
        new Street(
            "Old Harrow Road",
            besideHarrow(),
            knots("0 2, 600 3.6, 1500 2.2, 3400 1.6, 5200 -0.5, 7000 4.8, 9000 4.2, 10500 0"),
            harrow.at(OLD_ROAD_LEAVES).altitude(),
            0,
            0);
    Street.Point bridge = harrow.at(LANE_CROSSES);
    bramble = overBridge(across(bridge), bridge.altitude() + 7);
    Street.Point fork = harrow.at(FELL_LEAVES);
    fell =
        new Street(
            "Fell Road",
            leaving(fork, "0 0, 350 30, 800 190, 1500 700, 2300 1300, 3500 1800, 5200 2200"),
            knots("0 1, 500 6.2, 1200 8.4, 3600 8.0, 4400 2, 6000 0"),
            fork.altitude(),
            0,
            0);
    quarry =
        new Street(
            "Quarry Bends",
            spots(
                "3000 -4000, 3900 -4000, 4500 -4010, 4640 -3975, 4500 -3940, 3900 -3950,"
                    + " 3300 -3960, 3160 -3925, 3300 -3890, 3900 -3900, 4500 -3890, 5600 -3700"),
            knots("0 0.5, 500 6.8, 4400 7.2, 5200 1, 6000 0"),
            180,
            0,
            0);
  }

  /** The country that comes with the program. */
  public static Country larkmoor() {
    return LARKMOOR;
  }

  /** Over the Harrow: two long climbs with a tunnel between them, 24 km and more. */
  public Tour overTheHarrow() {
    return tour("over the Harrow", new Tour.Stretch(harrow, 0, harrow.length()));
  }

  /** The same road the other way. */
  public Tour backOverTheHarrow() {
    return tour("back over the Harrow", new Tour.Stretch(harrow, harrow.length(), 0));
  }

  /** Off to the old road, which runs some 30 m beside the main one for 3 km, less steep. */
  public Tour byTheOldRoad() {
    return tour(
        "by the old road",
        new Tour.Stretch(harrow, 0, OLD_ROAD_LEAVES),
        new Tour.Stretch(oldHarrow, 0, oldHarrow.length()));
  }

  /** A lane that crosses the Harrow on a bridge, 7 m above it. */
  public Tour alongBrambleLane() {
    return tour("along Bramble Lane", new Tour.Stretch(bramble, 0, bramble.length()));
  }

  /** At the fork between the two climbs of the Harrow to the left, where it is steeper. */
  public Tour toTheFell() {
    return tour(
        "to the Fell",
        new Tour.Stretch(harrow, 0, FELL_LEAVES),
        new Tour.Stretch(fell, 0, fell.length()));
  }

  /** Turned around on the first climb of the Harrow. */
  public Tour turnedAround() {
    return tour(
        "turned around", new Tour.Stretch(harrow, 0, 9000), new Tour.Stretch(harrow, 9000, 1500));
  }

  /** Up the Quarry Bends: three limbs of a hairpin road, some 50 m beside each other. */
  public Tour upTheQuarryBends() {
    return tour("up the Quarry Bends", new Tour.Stretch(quarry, 0, quarry.length()));
  }

  /** All tours. */
  public List<Tour> tours() {
    return List.of(
        overTheHarrow(),
        backOverTheHarrow(),
        byTheOldRoad(),
        alongBrambleLane(),
        toTheFell(),
        turnedAround(),
        upTheQuarryBends());
  }

  double latitude(Street.Spot spot) {
    return LATITUDE + spot.north() / METRES_PER_DEGREE;
  }

  double longitude(Street.Spot spot) {
    return LONGITUDE + spot.east() / (METRES_PER_DEGREE * NARROWING);
  }

  private Tour tour(String name, Tour.Stretch... stretches) {
    return new Tour(name, this, List.of(stretches));
  }

  /** Leaves within 250 m, keeps 30 m to the right for kilometres, then turns away. */
  private List<Street.Spot> besideHarrow() {
    List<Street.Spot> bends = new ArrayList<>();
    for (double along = OLD_ROAD_LEAVES; along <= OLD_ROAD_TURNS_AWAY; along += 50) {
      double aside = 30 * Math.min(1, (along - OLD_ROAD_LEAVES) / 250);
      bends.add(moved(harrow.at(along), 0, -aside));
    }
    Street.Point last = harrow.at(OLD_ROAD_TURNS_AWAY);
    bends.add(moved(last, 300, -120));
    bends.add(moved(last, 900, -700));
    bends.add(moved(last, 2000, -1500));
    bends.add(moved(last, 4500, -1900));
    return bends;
  }

  /** The lane's middle is on the bridge. */
  private static Street overBridge(List<Street.Spot> bends, double bridgeAltitude) {
    List<Road.Knot> knots = knots("0 -1.2, 2500 -0.8, 3100 0.2, 5500 -2.5, 6600 0");
    Street fromSeaLevel = new Street("Bramble Lane", bends, knots, 0, 0, 0);
    double start = bridgeAltitude - fromSeaLevel.at(fromSeaLevel.length() / 2).altitude();
    return new Street("Bramble Lane", bends, knots, start, 0, 0);
  }

  private static List<Street.Spot> across(Street.Point bridge) {
    return IntStream.rangeClosed(-3, 3)
        .mapToObj(step -> moved(bridge, 120.0 * step * step, 1000.0 * step))
        .toList();
  }

  private static List<Street.Spot> leaving(Street.Point from, String aheadAndAside) {
    return spots(aheadAndAside).stream()
        .map(spot -> moved(from, spot.east(), spot.north()))
        .toList();
  }

  /** A spot so far ahead and to the left of a point. */
  private static Street.Spot moved(Street.Point from, double ahead, double left) {
    double cosine = Math.cos(from.heading());
    double sine = Math.sin(from.heading());
    return new Street.Spot(
        from.spot().east() + ahead * cosine - left * sine,
        from.spot().north() + ahead * sine + left * cosine);
  }

  /** Pairs of metres east and north, apart by commas. */
  private static List<Street.Spot> spots(String pairs) {
    return pairs(pairs).map(pair -> new Street.Spot(pair[0], pair[1])).toList();
  }

  /** Pairs of metres and per cent, apart by commas. */
  private static List<Road.Knot> knots(String pairs) {
    return pairs(pairs).map(pair -> new Road.Knot(pair[0], pair[1])).toList();
  }

  private static Stream<double[]> pairs(String pairs) {
    return Stream.of(pairs.split(", ", -1))
        .map(pair -> Stream.of(pair.split(" ", -1)).mapToDouble(Double::parseDouble).toArray());
  }
}
