package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.TourDrive;
import steadypull.store.LibraryException;
import steadypull.store.ToldTours;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;

/**
 * The story of a road that was driven three times: the fourth drive is told the climb before it
 * begins, and nobody is told anything once the roads are forgotten. What is true is what the
 * invented country says.
 */
class KnownRoadAheadTest {
  private static final Tour TOUR = Country.larkmoor().overTheHarrow();

  /** The first climb of the Harrow: 5.2 to 5.8 %, and level again from 10 200 m on. */
  private static final double BEFORE_THE_CLIMB_METRES = 4000;

  private static final double TOP_METRES = 10_100;

  @TempDir Path folder;

  @Test
  void theFourthDriveIsToldTheClimbAheadAndAfterForgettingNothing() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      TourDrive fourth = TourDrive.of(TOUR, 4);
      assertThat(known(drive(library, fourth))).isEmpty();
      for (int day = 1; day <= 3; day++) {
        ToldTours.keep(library, TOUR, day);
      }
      ToldTours.learn(library);

      List<Second> seconds = drive(library, fourth);

      assertThat(known(seconds).getFirst().metres).as("recognised soon").isLessThan(700);
      Second before =
          seconds.stream()
              .filter(second -> second.metres > BEFORE_THE_CLIMB_METRES)
              .findFirst()
              .orElseThrow();
      ClimbAhead climb = before.road.climb().orElseThrow();
      assertThat(climb.isBegun()).isFalse();
      assertThat(climb.isTopKnown()).isTrue();
      assertThat(before.metres + climb.toEndMetres()).isBetween(TOP_METRES - 250, TOP_METRES + 250);
      assertThat(climb.meanGrade()).isBetween(0.045, 0.06);

      library.roads().forgetAll();
      assertThat(known(drive(library, fourth))).isEmpty();
    }
  }

  /** Somebody else's drive ends, or somebody forgets, while this one is under way. */
  @Test
  void whatIsLearnedOrForgottenOnTheWayHoldsTwoSecondsLater() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      ToldTours.keep(library, TOUR, 1);
      TourDrive drive = TourDrive.of(TOUR, 4);
      int learned = 200;
      int forgotten = 400;
      List<Second> seconds =
          drive(
              library,
              drive,
              second -> {
                if (second == learned) {
                  ToldTours.learn(library);
                } else if (second == forgotten) {
                  library.roads().forgetAll();
                }
              });

      assertThat(known(seconds.subList(0, learned - 1))).isEmpty();
      // recognised some 20 s after it came to be known, as at any drive's begin
      assertThat(known(seconds.subList(learned + 3, learned + 40))).isNotEmpty();
      assertThat(known(seconds.subList(learned + 40, forgotten - 1)))
          .hasSize(forgotten - 1 - learned - 40);
      assertThat(known(seconds.subList(forgotten + 3, seconds.size()))).isEmpty();
    }
  }

  private interface OnTheWay {
    void second(int second) throws Exception;
  }

  private record Second(double metres, RoadState road) {}

  private static List<Second> known(List<Second> seconds) {
    return seconds.stream()
        .filter(second -> second.road.ahead() instanceof RoadAhead.Known)
        .toList();
  }

  private static List<Second> drive(TripLibrary library, TourDrive drive) {
    return drive(library, drive, _ -> {});
  }

  private static List<Second> drive(TripLibrary library, TourDrive drive, OnTheWay onTheWay) {
    List<Second> seconds = new ArrayList<>();
    PipelineOutput output =
        new PipelineOutput() {
          @Override
          public void second(DriveSnapshot snapshot) {
            int second = (int) (snapshot.timeMicros() / 1_000_000);
            if (second <= drive.truth().size()) {
              double metres = drive.truth().get(second - 1).place().metres();
              seconds.add(new Second(metres, snapshot.road()));
            }
          }
        };
    DrivePipeline pipeline =
        new DrivePipeline(
            DemoDrives.ENGLISH.setup(drive.vehicle(), true),
            DemoDrives.START,
            Optional.of(
                new RememberedRoad(
                    (place, metres, taker) -> {
                      try {
                        taker.accept(
                            library
                                .roads()
                                .tilesAround(
                                    place.latitudeDegrees(), place.longitudeDegrees(), metres));
                      } catch (LibraryException e) {
                        throw new AssertionError(e);
                      }
                    })),
            output);
    int second = 0;
    for (Sample sample : drive.samples()) {
      while (second < sample.timeMicros() / 1_000_000) {
        second++;
        try {
          onTheWay.second(second);
        } catch (Exception e) {
          throw new AssertionError(e);
        }
      }
      pipeline.accept(new TripEntry.OfSample(sample));
    }
    return seconds;
  }
}
