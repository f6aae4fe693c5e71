package steadypull.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import steadypull.road.climb.KnownClimb;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TilesAround;

/**
 * What a library knows of roads. It learns them from trips that have ended, each trip once, and
 * forgets them when it is told to; a trip that is thrown away has taught what it taught. Any
 * thread.
 */
public final class KnownRoads {
  private final LibraryConnection connection;
  private final RoadLearning learning;
  private final LearningThread thread;
  private final ReadingThread reader = new ReadingThread();
  private final RoadForgetting forgetting;

  KnownRoads(TripLibrary library, LibraryConnection connection) {
    this.connection = connection;
    this.learning = new RoadLearning(library, connection);
    this.thread = new LearningThread("roads", learning);
    this.forgetting = new RoadForgetting(connection);
  }

  /** The climbs that were recognised, first driven first. */
  public List<KnownClimb> climbs() throws LibraryException {
    return connection.ask("list the climbs", ClimbRows::all);
  }

  /** How many trips have ended whose roads are not learned yet. */
  public int waiting() throws LibraryException {
    return learning.waiting();
  }

  /**
   * Learns the roads of the oldest trip that waits, on the calling thread; about a tenth of a
   * second for an hour of driving.
   *
   * @return empty if no trip waits, or after {@link #stopLearning}
   */
  public Optional<LearnedTrip> learnNext() throws LibraryException {
    return learning.nextTrip();
  }

  /**
   * What to tell of trips whose roads could not be learned since the library was opened, four parts
   * each. They are left out until it is opened again.
   */
  public List<String> unlearnt() {
    return learning.unlearnt();
  }

  /** Ends learning at once, for as long as the library is open: trips wait for the next time. */
  public void stopLearning() {
    learning.stop();
  }

  /** Learns the roads of all trips that wait, beside everything else. */
  public void learnBeside() {
    thread.wake();
  }

  /** Waits until nothing is learned beside any more. */
  public void awaitLearned() throws InterruptedException {
    thread.await();
  }

  /**
   * The tiles of the memory of roads around a place.
   *
   * @param latitudeDegrees -90 to 90
   * @param longitudeDegrees -180 to 180
   * @param metres around it
   * @return their octets; a tile that is not there is not known
   */
  public Map<TileKey, byte[]> tilesAround(
      double latitudeDegrees, double longitudeDegrees, double metres) throws LibraryException {
    return connection.ask(
        "read what is known of roads",
        handle -> {
          RoadTiles rows = new RoadTiles(handle);
          Map<TileKey, byte[]> tiles = new HashMap<>();
          for (TileKey key : TilesAround.of(latitudeDegrees, longitudeDegrees, metres)) {
            rows.find(key.number()).ifPresent(tile -> tiles.put(key, tile));
          }
          return tiles;
        });
  }

  /**
   * Reads the tiles around a place as {@link #tilesAround} does, beside everything else. If they
   * cannot be read, nothing is handed over: whoever drives goes on without a look ahead, and what
   * is wrong with the library is told by recording.
   *
   * @param taker takes them on the reading thread
   */
  public void readBeside(
      double latitudeDegrees,
      double longitudeDegrees,
      double metres,
      Consumer<Map<TileKey, byte[]>> taker) {
    reader.read(() -> taker.accept(tilesAround(latitudeDegrees, longitudeDegrees, metres)));
  }

  /**
   * Forgets all roads and climbs. What comes later is learned; what trips up to now could still
   * have taught is not.
   */
  public Forgotten forgetAll() throws LibraryException {
    return forgetting.all();
  }

  /** Forgets the roads and climbs at a place, and learns none there from now on. */
  public Forgotten forget(QuietPlace place) throws LibraryException {
    return forgetting.around(place);
  }

  /** Where nothing is learned, in the order in which it was said. */
  public List<QuietPlace> quietPlaces() throws LibraryException {
    return connection.ask("list the quiet places", RoadRows::quietPlaces);
  }

  /**
   * Learns again at a quiet place, from trips that come later.
   *
   * @param number in the list of quiet places, from 1
   * @return false if there is none of that number
   */
  public boolean rememberAgain(int number) throws LibraryException {
    return connection.change("learn roads again", handle -> RoadRows.liftQuiet(handle, number));
  }

  /** Waits for whatever reads or learns. */
  void close() {
    thread.close();
    reader.close();
  }
}
