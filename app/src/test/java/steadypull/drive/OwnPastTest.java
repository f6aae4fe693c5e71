package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.demo.road.Country;
import steadypull.demo.road.Street;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.TourDrive;
import steadypull.road.memory.TileKey;

/**
 * A trip that comes back along its own road, in a library that knows nothing: what was told
 * beforehand against what the invented country says came.
 */
@Execution(ExecutionMode.CONCURRENT)
class OwnPastTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final Street HARROW = LARKMOOR.overTheHarrow().stretches().getFirst().street();

  /** Off another road by more than that, per cent of grade: no error of a pass is so large. */
  private static final double OTHER_ROAD_PERCENT = 1.5;

  /** The road behind is learned as soon as the vehicle turns, not minutes later. */
  @Test
  void whoTurnsBackIsToldTheRoadThatHeCameFrom() {
    Tour tour = LARKMOOR.turnedAround();
    double turn = tour.stretches().getFirst().to();

    List<WatchedTour.Second> seconds = drive(tour);

    assertThat(seconds).filteredOn(second -> second.metres() < turn).noneMatch(this::isKnown);
    assertThat(knownFrom(seconds, turn)).isLessThan(turn + 400);
    assertThat(errorsPercent(tour, seconds, 500))
        .hasSizeGreaterThan(250)
        .allMatch(error -> error < OTHER_ROAD_PERCENT)
        .satisfies(errors -> assertThat(rootMeanSquare(errors)).isLessThan(0.4));
    assertThat(rootMeanSquare(errorsPercent(tour, seconds, 2000))).isLessThan(0.4);
    assertThat(errorsPercent(tour, seconds, 6000)).as("pieces hang together").isNotEmpty();
  }

  /** Up the first climb of the Harrow, turned, down, turned, and up again, the same way. */
  @Test
  void theSecondLapIsToldTheClimbBeforeItBegins() {
    double up = 11_500;
    double start = 300;
    Tour laps =
        new Tour(
            "laps",
            LARKMOOR,
            List.of(
                new Tour.Stretch(HARROW, 0, up),
                new Tour.Stretch(HARROW, up, start),
                new Tour.Stretch(HARROW, start, up)));
    double secondLap = up + (up - start);

    List<WatchedTour.Second> seconds = drive(laps);

    assertThat(knownFrom(seconds, secondLap)).isLessThan(secondLap + 400);
    ClimbAhead climb =
        seconds.stream()
            .filter(second -> second.metres() > secondLap + 3000)
            .findFirst()
            .flatMap(WatchedTour.Second::climb)
            .orElseThrow();
    assertThat(climb.isBegun()).isFalse();
    assertThat(climb.isTopKnown()).as("pieces hang together").isTrue();
    assertThat(climb.meanGrade()).as("5.2 to 5.8 %").isBetween(0.045, 0.06);
    assertThat(errorsPercent(laps, seconds, 1000)).allMatch(error -> error < OTHER_ROAD_PERCENT);
  }

  /** So a long day costs no more memory than some hundred kilometres of roads. */
  @Test
  void ofWhatATripHasLearnedTheLatestStays() {
    LoadedTiles tiles = new LoadedTiles();
    for (int row = 0; row < 1000; row++) {
      tiles.save(Map.of(new TileKey(row, 7), new byte[] {1}), Set.of());
    }

    assertThat(tiles.load(new TileKey(0, 7))).isEmpty();
    assertThat(tiles.load(new TileKey(999, 7))).isPresent();
    assertThat(tiles.load(new TileKey(800, 7))).isPresent();
  }

  @Test
  void whatATripHasLearnedLiesOverWhatTheLibraryKnows() {
    TileKey key = new TileKey(1, 7);
    LoadedTiles tiles = new LoadedTiles();
    tiles.take(Map.of(key, new byte[] {1}), false);
    tiles.save(Map.of(key, new byte[] {2}), Set.of());
    tiles.take(Map.of(key, new byte[] {1}), true);

    assertThat(tiles.load(key).map(octets -> octets[0])).isEqualTo(Optional.of((byte) 2));
  }

  @Test
  void whatTheLibraryForgetsATripForgetsToo() {
    TileKey key = new TileKey(1, 7);
    LoadedTiles tiles = new LoadedTiles();
    tiles.take(Map.of(key, new byte[] {1}), false);
    tiles.save(Map.of(key, new byte[] {2}), Set.of());
    tiles.take(Map.of(), true);

    assertThat(tiles.load(key)).isEmpty();
  }

  @Test
  void whatATripHasLearnedIsStillThereWhenItsTilesAreLeftBehind() {
    TileKey key = new TileKey(1, 7);
    LoadedTiles tiles = new LoadedTiles();
    tiles.take(Map.of(key, new byte[] {1}), false);
    tiles.save(Map.of(key, new byte[] {2}), Set.of());
    tiles.take(Map.of(), false);

    assertThat(tiles.load(key).map(octets -> octets[0])).isEqualTo(Optional.of((byte) 2));
  }

  private static List<WatchedTour.Second> drive(Tour tour) {
    return WatchedTour.of(
        TourDrive.of(tour, 1),
        new RememberedRoad((place, metres, taker) -> taker.accept(Map.of())));
  }

  private boolean isKnown(WatchedTour.Second second) {
    return second.isKnown();
  }

  private static double knownFrom(List<WatchedTour.Second> seconds, double metres) {
    return seconds.stream()
        .filter(second -> second.metres() > metres && second.isKnown())
        .findFirst()
        .orElseThrow()
        .metres();
  }

  /** Of the mean grade of the last 200 m so far ahead, wherever it was told as certain. */
  private static List<Double> errorsPercent(
      Tour tour, List<WatchedTour.Second> seconds, int aheadMetres) {
    List<Double> errors = new ArrayList<>();
    for (WatchedTour.Second second : seconds) {
      if (second.ahead() instanceof RoadAhead.Known known
          && known.certain().lengthMetres() >= aheadMetres
          && second.metres() + aheadMetres < tour.length()) {
        double told = 0;
        for (int piece = aheadMetres / 50 - 4; piece < aheadMetres / 50; piece++) {
          told += known.certain().grade(piece) * 100 / 4;
        }
        errors.add(Math.abs(told - truth(tour, second.metres() + aheadMetres - 200)));
      }
    }
    return errors;
  }

  private static double truth(Tour tour, double from) {
    double sum = 0;
    for (int step = 0; step < 40; step++) {
      sum += tour.at(from + 5 * step + 2.5).gradePercent();
    }
    return sum / 40;
  }

  private static double rootMeanSquare(List<? extends Double> errors) {
    return Math.sqrt(errors.stream().mapToDouble(error -> error * error).average().orElseThrow());
  }
}
