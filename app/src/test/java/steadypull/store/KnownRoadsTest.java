package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;
import steadypull.road.climb.ClimbLine;
import steadypull.road.grade.PassTrace;
import steadypull.road.memory.RoadMemory;
import steadypull.road.memory.TileContents;
import steadypull.road.memory.TileKey;

/** A library learns each trip's roads once, and forgets for good. */
class KnownRoadsTest {
  private static final Tour TOUR = Country.larkmoor().overTheHarrow();

  @TempDir Path folder;

  @Test
  void everyTripIsLearnedOnce() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      ToldTours.keep(library, TOUR, 1);
      ToldTours.keep(library, TOUR, 2);
      assertThat(library.roads().waiting()).isEqualTo(2);

      assertThat(ToldTours.learn(library)).isEqualTo(2);

      assertThat(library.roads().waiting()).isZero();
      Map<Integer, String> learned = tiles(folder);
      assertThat(learned).isNotEmpty();
      assertThat(library.roads().learnNext()).isEmpty();
      assertThat(tiles(folder)).isEqualTo(learned);
    }
  }

  /** The first trip that is looked at cannot be traced, whatever the reason. */
  @Test
  void aTripThatCannotBeTracedIsToldAndLeftOutWhileTheOthersTeach() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        LibraryConnection connection = LibraryConnection.open(folder, Duration.ofSeconds(5))) {
      String first = ToldTours.keep(library, TOUR, 1);
      String second = ToldTours.keep(library, TOUR, 2);
      AtomicInteger traced = new AtomicInteger();
      RoadLearning learning =
          new RoadLearning(
              library,
              connection,
              vehicle -> {
                if (traced.incrementAndGet() == 1) {
                  throw new ArithmeticException("no way");
                }
                return new PassTrace(vehicle);
              });

      assertThat(learning.nextTrip())
          .hasValueSatisfying(trip -> assertThat(trip.tripId()).isEqualTo(second));
      assertThat(learning.nextTrip()).isEmpty();

      assertThat(learning.unlearnt())
          .singleElement()
          .asString()
          .startsWith("Could not learn the roads of trip " + first)
          .contains("expected", "found ArithmeticException (no way)", "tried again when");
      assertThat(learning.waiting()).as("it waits for the next time").isEqualTo(1);
      assertThat(ToldTours.learn(library)).isPositive();
    }
  }

  /** Known by its own id, a trip that comes back as a file is the same trip. */
  @Test
  void aTripThatWasThrownAwayAndComesBackIsNotLearnedAgain() throws Exception {
    Path file = folder.resolve("away.trip");
    Path home = folder.resolve("home");
    try (TripLibrary library = TripLibrary.open(home)) {
      String trip = ToldTours.keep(library, TOUR, 1);
      ToldTours.learn(library);
      try (var out = Files.newOutputStream(file)) {
        PortableTrip.write(library, library.find(trip), _ -> true, out);
      }
      library.remove(trip);
    }
    Map<Integer, String> learned = tiles(home);
    assertThat(learned).as("throwing a trip away does not unlearn its roads").isNotEmpty();

    try (TripLibrary library = TripLibrary.open(home);
        PortableTrip trip = PortableTrip.open(file)) {
      library.addTrips(adder -> adder.merge(trip, details -> details));
      assertThat(library.roads().waiting()).isZero();
    }
  }

  @Test
  void aTripFileCarriesNothingOfTheMemory() throws Exception {
    Path home = folder.resolve("home");
    Path carriedFolder = Files.createDirectory(folder.resolve("carried"));
    Path file = LibraryFile.in(carriedFolder);
    try (TripLibrary library = TripLibrary.open(home)) {
      String trip = ToldTours.keep(library, TOUR, 1);
      ToldTours.learn(library);
      library.roads().forget(new QuietPlace(-41.4, -118, 100));
      try (var out = Files.newOutputStream(file)) {
        PortableTrip.write(library, library.find(trip), _ -> true, out);
      }
    }

    assertThat(tiles(carriedFolder)).isEmpty();
    try (TripLibrary carried = TripLibrary.open(carriedFolder)) {
      assertThat(carried.roads().quietPlaces()).isEmpty();
      assertThat(carried.roads().waiting()).isEqualTo(1);
    }
  }

  @Test
  void aTripWithoutPositionsTeachesNothing() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      TourDrive drive = TourDrive.of(TOUR, 1);
      List<Sample> unplaced =
          drive.samples().stream()
              .filter(sample -> !Channels.located().contains(sample.channel()))
              .toList();
      ToldTours.keep(
          library,
          new TourDrive(drive.vehicle(), drive.trueMassKilograms(), unplaced, drive.truth()),
          1);

      assertThat(library.roads().learnNext().orElseThrow().passes()).isZero();

      assertThat(library.roads().waiting()).isZero();
      assertThat(tiles(folder)).isEmpty();
    }
  }

  @Test
  void whatIsForgottenIsNotLearnedAnew() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      ToldTours.keep(library, TOUR, 1);
      ToldTours.learn(library);
      ToldTours.keep(library, TOUR, 2);

      Forgotten forgotten = library.roads().forgetAll();

      assertThat(forgotten.metres()).isBetween(1.8 * TOUR.length(), 2.2 * TOUR.length());
      assertThat(tiles(folder)).isEmpty();
      assertThat(library.roads().waiting()).as("trips up to now teach nothing").isZero();
      ToldTours.keep(library, TOUR, 3);
      assertThat(ToldTours.learn(library)).isEqualTo(1);
      assertThat(tiles(folder)).isNotEmpty();
    }
  }

  @Test
  void aQuietPlaceIsForgottenAndStaysQuietUntilSaidOtherwise() throws Exception {
    TourDrive drive = TourDrive.of(TOUR, 1);
    QuietPlace quiet =
        new QuietPlace(middle(drive, Channels.LATITUDE), middle(drive, Channels.LONGITUDE), 1500);
    try (TripLibrary library = TripLibrary.open(folder)) {
      ToldTours.keep(library, drive, 1);
      ToldTours.learn(library);
      int before = piecesWithin(library, quiet);
      assertThat(before).isGreaterThan(60);
      int all = pieces(library);

      Forgotten forgotten = library.roads().forget(quiet);

      assertThat(forgotten.pieces()).isBetween(before, before + 8);
      assertThat(piecesWithin(library, quiet)).isZero();
      assertThat(pieces(library)).isEqualTo(all - forgotten.pieces());
      assertThat(library.roads().quietPlaces()).containsExactly(quiet);

      ToldTours.keep(library, TOUR, 2);
      ToldTours.learn(library);
      assertThat(piecesWithin(library, quiet)).isZero();

      assertThat(library.roads().rememberAgain(2)).isFalse();
      assertThat(library.roads().rememberAgain(1)).isTrue();
      ToldTours.keep(library, TOUR, 3);
      ToldTours.learn(library);
      assertThat(piecesWithin(library, quiet)).isGreaterThan(60);
    }
  }

  /** The Harrow's two climbs one way, and what they are the other way. */
  @Test
  void climbsAreKeptOnceWithTheirIdAndForgottenWithTheRoads() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      keepThree(library);
      ToldTours.learn(library);
      assertThat(library.roads().climbs()).hasSize(2);
      ClimbLine.Vertex onTheFirst =
          library.roads().climbs().getFirst().line().vertices().getFirst();

      Forgotten forgotten =
          library
              .roads()
              .forget(
                  new QuietPlace(onTheFirst.latitudeDegrees(), onTheFirst.longitudeDegrees(), 300));

      assertThat(forgotten.climbs()).isEqualTo(1);
      assertThat(library.roads().climbs()).hasSize(1);
      assertThat(library.roads().forgetAll().climbs()).isEqualTo(1);
      assertThat(library.roads().climbs()).isEmpty();
    }
  }

  @Test
  void twoProgramsThatLearnAtTheSameTimeLearnEachTripOnce() throws Exception {
    Path together = folder.resolve("together");
    Path alone = folder.resolve("alone");
    try (TripLibrary library = TripLibrary.open(alone)) {
      keepThree(library);
      ToldTours.learn(library);
    }
    try (TripLibrary one = TripLibrary.open(together);
        TripLibrary other = TripLibrary.open(together)) {
      keepThree(one);
      one.roads().learnBeside();
      other.roads().learnBeside();
      one.roads().awaitLearned();
      other.roads().awaitLearned();
      assertThat(one.roads().waiting()).isZero();
    }
    assertThat(tiles(together)).isEqualTo(tiles(alone));
  }

  @Test
  void whoClosesTheLibraryWaitsForNoTripAndTheNextGoesOn() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      keepThree(library);
      library.roads().stopLearning();
      assertThat(library.roads().learnNext()).isEmpty();
      assertThat(library.roads().waiting()).isEqualTo(3);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(ToldTours.learn(library)).isEqualTo(3);
    }
  }

  /** Half-way. */
  private static double middle(TourDrive drive, Channel channel) {
    List<Sample> told =
        drive.samples().stream().filter(sample -> sample.channel().equals(channel)).toList();
    return told.get(told.size() / 2).value();
  }

  private static void keepThree(TripLibrary library) throws LibraryException {
    for (int day = 1; day <= 3; day++) {
      ToldTours.keep(library, TOUR, day);
    }
  }

  private static int pieces(TripLibrary library) throws LibraryException {
    return library.roads().tilesAround(-41.5, -118, 60_000).entrySet().stream()
        .mapToInt(tile -> RoadTiles.contents(tile.getKey().number(), tile.getValue()).pieces())
        .sum();
  }

  /** Counted by forgetting them in a copy of the tiles. */
  private static int piecesWithin(TripLibrary library, QuietPlace place) throws LibraryException {
    Map<TileKey, byte[]> tiles = new TreeMap<>(Comparator.comparingInt(TileKey::number));
    tiles.putAll(library.roads().tilesAround(-41.5, -118, 60_000));
    TileContents before = contents(tiles);
    var shelf = RoadMemory.shelfInMemory();
    shelf.save(tiles, Set.of());
    new RoadMemory(shelf)
        .forgetAround(place.latitudeDegrees(), place.longitudeDegrees(), place.radiusMetres());
    tiles.replaceAll((key, _) -> shelf.load(key).orElse(new byte[0]));
    tiles.values().removeIf(tile -> tile.length == 0);
    return before.pieces() - contents(tiles).pieces();
  }

  private static TileContents contents(Map<TileKey, byte[]> tiles) {
    return tiles.entrySet().stream()
        .map(tile -> RoadTiles.contents(tile.getKey().number(), tile.getValue()))
        .reduce(TileContents.NOTHING, TileContents::plus);
  }

  /** The octets of every tile by its number. */
  static Map<Integer, String> tiles(Path folder) throws LibraryException {
    try (LibraryConnection library = LibraryConnection.openToRead(folder, Duration.ofSeconds(5))) {
      return library.ask(
          "read the tiles",
          handle -> {
            RoadTiles rows = new RoadTiles(handle);
            return rows.keys().stream()
                .collect(
                    Collectors.toMap(
                        Math::toIntExact, key -> Arrays.toString(rows.find(key).orElseThrow())));
          });
    }
  }
}
