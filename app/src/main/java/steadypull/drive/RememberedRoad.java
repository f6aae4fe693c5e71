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
 * come to their edge; until they are there, nothing is known. They are read again every {@link
 * #AGAIN_SECONDS}, so that what another drive or program has learned or forgotten meanwhile holds
 * here too. Pipeline thread only, but for the reading.
 */
final class RememberedRoad implements RoadSight {
  /** The memory looks some 15 km ahead. */
  private static final double AROUND_METRES = 30_000;

  /** So far from the middle, tiles are read around a new one. */
  private static final double MIDDLE_METRES = 8000;

  /** Nobody asks how old a road of this trip is. */
  private static final LocalDate THIS_DAY = LocalDate.EPOCH;

  /** So soon after they were asked for, tiles are asked for again. */
  static final double AGAIN_SECONDS = 2;

  /** What was not handed over by then never will be. */
  private static final double LOST_SECONDS = 10;

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

  /** What was read around a place. */
  private record Found(PositionFix around, Map<TileKey, byte[]> tiles) {}

  private final Reading reading;
  private final LoadedTiles tiles = new LoadedTiles();
  private final RoadMemory memory = new RoadMemory(tiles);
  private final RoadMatcher matcher = new RoadMatcher(memory);
  private final AtomicReference<Optional<Found>> read = new AtomicReference<>(Optional.empty());
  private Optional<FlatGround> middle = Optional.empty();
  private Optional<PositionFix> place = Optional.empty();
  private Optional<PositionFix> loadedAround = Optional.empty();
  private double askedSeconds = Double.NEGATIVE_INFINITY;
  private boolean isAsked;
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
      place = Optional.of(fix);
      ask(fix, fix.seconds());
    }
    take();
    if (isLoaded) {
      matcher.fixed(fix);
    }
  }

  @Override
  public void moved(double seconds, double metres) {
    take();
    if (seconds - askedSeconds >= (isAsked ? LOST_SECONDS : AGAIN_SECONDS)) {
      place.ifPresent(around -> ask(around, seconds));
    }
    matcher.moved(seconds, metres);
  }

  private void ask(PositionFix around, double seconds) {
    askedSeconds = seconds;
    isAsked = true;
    reading.read(around, AROUND_METRES, found -> read.set(Optional.of(new Found(around, found))));
  }

  private void take() {
    read.getAndSet(Optional.empty())
        .ifPresent(
            loaded -> {
              boolean isSamePlace = loadedAround.equals(Optional.of(loaded.around()));
              matcher.changed(tiles.take(loaded.tiles(), isSamePlace));
              loadedAround = Optional.of(loaded.around());
              isAsked = false;
              isLoaded = true;
            });
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
