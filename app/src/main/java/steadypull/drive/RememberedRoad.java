package steadypull.drive;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.memory.PassSoFar;
import steadypull.road.memory.RoadMatcher;
import steadypull.road.memory.RoadMemory;
import steadypull.road.memory.TileKey;

/**
 * Looks ahead with what the library remembers of roads and with what this trip has driven itself.
 * Tiles are read beside the pipeline, far enough around the vehicle that the look ahead does not
 * come to their edge; until they are there, nothing is known. Pipeline thread only, but for the
 * reading.
 */
final class RememberedRoad implements RoadSight {
  /** The memory looks some 15 km ahead. */
  private static final double AROUND_METRES = 30_000;

  /** So far from the middle, tiles are read around a new one. */
  private static final double MIDDLE_METRES = 8000;

  /** Nobody asks how old a road of this trip is. */
  private static final LocalDate THIS_DAY = LocalDate.EPOCH;

  /** Reads tiles of the memory of roads, on whatever thread. */
  @FunctionalInterface
  interface Reading {
    /**
     * Reads the tiles around a place; what cannot be read is never handed over.
     *
     * @param metres around it
     * @param taker any thread
     */
    void read(PositionFix place, double metres, Consumer<Map<TileKey, byte[]>> taker);
  }

  private final Reading reading;
  private final LoadedTiles tiles = new LoadedTiles();
  private final RoadMemory memory = new RoadMemory(tiles);
  private final RoadSight matcher = new RoadMatcher(memory);
  private final AtomicReference<Optional<Map<TileKey, byte[]>>> read =
      new AtomicReference<>(Optional.empty());
  private Optional<FlatGround> middle = Optional.empty();
  private boolean isLoaded;
  private PassSoFar pass = PassSoFar.nothing();

  /** Looks at what that reads. */
  RememberedRoad(Reading reading) {
    this.reading = reading;
  }

  @Override
  public void fixed(PositionFix fix) {
    if (isFarFromMiddle(fix)) {
      middle = Optional.of(FlatGround.around(fix.latitudeDegrees(), fix.longitudeDegrees()));
      reading.read(fix, AROUND_METRES, found -> read.set(Optional.of(found)));
    }
    read.getAndSet(Optional.empty())
        .ifPresent(
            loaded -> {
              tiles.take(loaded);
              isLoaded = true;
            });
    if (isLoaded) {
      matcher.fixed(fix);
    }
  }

  @Override
  public void moved(double seconds, double metres) {
    matcher.moved(seconds, metres);
  }

  /** Known for the rest of this trip; the library learns it when the trip has ended. */
  @Override
  public void driven(RoadPass piece) {
    if (isLoaded) {
      pass = memory.learnOn(piece, THIS_DAY, pass);
    }
  }

  @Override
  public boolean learnsOnTheWay() {
    return true;
  }

  @Override
  public RoadAhead ahead() {
    return matcher.ahead();
  }

  private boolean isFarFromMiddle(PositionFix fix) {
    return middle
        .map(ground -> ground.spot(fix.latitudeDegrees(), fix.longitudeDegrees()))
        .map(spot -> Math.hypot(spot.east(), spot.north()) > MIDDLE_METRES)
        .orElse(true);
  }
}
