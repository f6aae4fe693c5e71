package steadypull.drive;

import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import steadypull.road.PositionFix;
import steadypull.road.RoadSight;
import steadypull.road.memory.RouteLine;
import steadypull.road.memory.TileKey;
import steadypull.store.KnownRoads;
import steadypull.store.LibraryException;

/**
 * What a replay may know of the road ahead in place of what its trip has kept. Each works on the
 * replay's thread; a library is read there too, so that the same replay says the same.
 */
public final class ReplayRoads {
  private ReplayRoads() {}

  /** Nothing. */
  public static RoadSight nothing() {
    return new UnknownRoad();
  }

  /**
   * What a library remembers, and what the drive has driven itself.
   *
   * @param roads open as long as the replay runs
   */
  public static RoadSight remembered(KnownRoads roads) {
    return new RememberedRoad(new OncePerPlace(roads));
  }

  /**
   * A route while the vehicle is on it, and what a library remembers.
   *
   * @param roads open as long as the replay runs
   */
  public static RoadSight alongRemembering(RouteLine line, KnownRoads roads) {
    return new RouteAndMemory(line, new OncePerPlace(roads));
  }

  /** A route while the vehicle is on it, and what the drive has driven itself. */
  public static RoadSight along(RouteLine line) {
    return new RouteAndMemory(line, (place, metres, taker) -> taker.accept(Map.of()));
  }

  /** A route and nothing else. */
  public static RoadSight alongOnly(RouteLine line) {
    return line.sight();
  }

  /** A route from its first point on, by the distance driven alone. */
  public static RoadSight byDistance(RouteLine line) {
    return new RouteByDistance(line);
  }

  /** In a replay nobody learns or forgets anything meanwhile. */
  private static final class OncePerPlace implements RememberedRoad.Reading {
    private final KnownRoads roads;
    private Optional<PositionFix> around = Optional.empty();
    private Map<TileKey, byte[]> tiles = Map.of();

    OncePerPlace(KnownRoads roads) {
      this.roads = roads;
    }

    @Override
    public void read(PositionFix place, double metres, Consumer<Map<TileKey, byte[]>> taker) {
      try {
        if (!around.equals(Optional.of(place))) {
          tiles = roads.tilesAround(place.latitudeDegrees(), place.longitudeDegrees(), metres);
          around = Optional.of(place);
        }
        taker.accept(tiles);
      } catch (LibraryException unreadable) {
        // As on a drive: whoever cannot read goes on without a look ahead; `check` tells the
        // damage.
        return;
      }
    }
  }
}
