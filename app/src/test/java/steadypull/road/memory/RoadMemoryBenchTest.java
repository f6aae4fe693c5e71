package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;

/** Pace and size with 20 000 km remembered: 200 winding roads of 100 km in a square of 200 km. */
@Tag("bench")
class RoadMemoryBenchTest {
  /** Time of this thread alone, whatever else the machine does. */
  private static final ThreadMXBean PROCESSOR = ManagementFactory.getThreadMXBean();

  private static final int ROADS = 200;
  private static final double ROAD_METRES = 100_000;
  private static final double SQUARE_METRES = 200_000;
  private static final double STEP_METRES = 25;
  private static final int SECONDS = 3600;

  private final FlatGround ground = FlatGround.around(-41, -118);
  private final Map<TileKey, byte[]> tiles = new HashMap<>();

  private final TileShelf shelf =
      new TileShelf() {
        @Override
        public Optional<byte[]> load(TileKey key) {
          return Optional.ofNullable(tiles.get(key));
        }

        @Override
        public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
          tiles.putAll(changed);
          tiles.keySet().removeAll(emptied);
        }
      };

  @Test
  void aSecondOfDrivingCostsLessThanAMillisecond() {
    RoadMemory world = new RoadMemory(shelf);
    List<RoadPass> roads = new ArrayList<>();
    for (int road = 0; road < ROADS; road++) {
      roads.add(road(new Random(road)));
      world.append(roads.getLast());
    }
    world.graph().tiles().save();
    double pieces = ROADS * ROAD_METRES / 50;
    double stored = tiles.values().stream().mapToLong(octets -> octets.length).sum() / pieces;
    double inMemory = allInMemory() / pieces;

    RoadMemory memory = new RoadMemory(shelf);
    drive(memory, roads.get(1)); // warms up
    double[] nanos = drive(memory, roads.get(0));
    double bruteForce = bruteForce(roads, roads.get(0));
    System.out.printf(
        Locale.ROOT,
        "20 000 km: %.3f ms mean, %.3f ms worst percent for each second of driving; nearest of all"
            + " pieces by brute force %.2f ms; for 50 m one way %.1f octets on the shelf, %.1f in"
            + " memory; %d kB at hand after an hour%n",
        nanos[0] / 1e6,
        nanos[1] / 1e6,
        bruteForce / 1e6,
        stored,
        inMemory,
        memory.octetsAtHand() / 1000);

    assertThat(nanos[0]).isLessThan(1e6);
    assertThat(nanos[0]).isLessThan(bruteForce);
    // both ways of a road together
    assertThat(2 * stored).isLessThan(100);
    assertThat(2 * inMemory).isLessThan(100);
  }

  private double allInMemory() {
    return tiles.entrySet().stream()
        .mapToLong(
            entry -> {
              try {
                return TileFormat.decode(entry.getKey(), entry.getValue()).octets();
              } catch (DamagedTileException broken) {
                throw new AssertionError(broken);
              }
            })
        .sum();
  }

  /** Mean and 99th percentile of the nanoseconds for each second; the road is always known. */
  private static double[] drive(RoadMemory memory, RoadPass road) {
    RoadMatcher matcher = new RoadMatcher(memory);
    Random random = new Random(3);
    long[] nanos = new long[SECONDS];
    int known = 0;
    double east = 0;
    double north = 0;
    for (int second = 0; second < SECONDS; second++) {
      PassPoint point = road.points().get(second);
      PassPoint.Place place = point.place().orElseThrow();
      east = 0.98 * east + 0.2 * 2.2 * random.nextGaussian();
      north = 0.98 * north + 0.2 * 2.2 * random.nextGaussian();
      PositionFix fix =
          new PositionFix(
              second,
              place.latitudeDegrees() + north / 111_000,
              place.longitudeDegrees() + east / 84_000,
              OptionalDouble.empty());
      long before = PROCESSOR.getCurrentThreadCpuTime();
      matcher.moved(second, second == 0 ? 0 : STEP_METRES);
      matcher.fixed(fix);
      RoadAhead ahead = matcher.ahead();
      nanos[second] = PROCESSOR.getCurrentThreadCpuTime() - before;
      known += ahead instanceof RoadAhead.Known ? 1 : 0;
    }
    assertThat(known).isGreaterThan(SECONDS * 9 / 10);
    Arrays.sort(nanos);
    double mean = Arrays.stream(nanos).average().orElseThrow();
    return new double[] {mean, nanos[SECONDS * 99 / 100]};
  }

  /** Nanoseconds to find the nearest of all pieces, without looking ahead from it. */
  private double bruteForce(List<RoadPass> roads, RoadPass driven) {
    double[] east = new double[(int) (ROADS * ROAD_METRES / 50)];
    double[] north = new double[east.length];
    int size = 0;
    for (RoadPass road : roads) {
      for (int i = 0; i + 1 < road.points().size(); i += 2) {
        FlatGround.Spot spot = spot(road.points().get(i));
        east[size] = spot.east();
        north[size++] = spot.north();
      }
    }
    long begin = PROCESSOR.getCurrentThreadCpuTime();
    double sum = 0;
    int looks = 200;
    for (int look = 0; look < looks; look++) {
      FlatGround.Spot here = spot(driven.points().get(look));
      double nearest = Double.POSITIVE_INFINITY;
      for (int i = 0; i < size; i++) {
        nearest = Math.min(nearest, Math.hypot(east[i] - here.east(), north[i] - here.north()));
      }
      sum += nearest;
    }
    assertThat(sum).isLessThan(looks * 50.0);
    return (double) (PROCESSOR.getCurrentThreadCpuTime() - begin) / looks;
  }

  private FlatGround.Spot spot(PassPoint point) {
    PassPoint.Place place = point.place().orElseThrow();
    return ground.spot(place.latitudeDegrees(), place.longitudeDegrees());
  }

  private RoadPass road(Random random) {
    double east = SQUARE_METRES * (random.nextDouble() - 0.5);
    double north = SQUARE_METRES * (random.nextDouble() - 0.5);
    double heading = 2 * Math.PI * random.nextDouble();
    double bend = 0;
    List<PassPoint> points = new ArrayList<>();
    for (double metres = 0; metres <= ROAD_METRES; metres += STEP_METRES) {
      points.add(
          new PassPoint(
              metres / STEP_METRES,
              metres,
              Optional.of(new PassPoint.Place(ground.latitude(north), ground.longitude(east), 2.5)),
              0,
              0.03 * Math.sin(metres / 700),
              0.004));
      bend = 0.9 * bend + 0.015 * random.nextGaussian();
      heading += bend;
      east += STEP_METRES * Math.cos(heading);
      north += STEP_METRES * Math.sin(heading);
    }
    return new RoadPass(points);
  }
}
