package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Street;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.road.Route;
import steadypull.road.TourDrive;
import steadypull.road.TourRoutes;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.memory.RouteLine;

/**
 * A route beside a table without positions: how far off the place is that speeds and grades tell,
 * over the Harrow and back, against where the invented country says the vehicle was. The route's
 * elevations err by 2.5 m, mass and wind are a usual world's.
 */
@Execution(ExecutionMode.CONCURRENT)
class RouteByDistanceTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final Street HARROW = LARKMOOR.overTheHarrow().stretches().getFirst().street();
  private static final Tour THERE_AND_BACK =
      new Tour(
          "there and back",
          LARKMOOR,
          List.of(new Tour.Stretch(HARROW, 0, 18_000), new Tour.Stretch(HARROW, 18_000, 0)));
  private static final Route ROUTE = TourRoutes.along(THERE_AND_BACK, 40, 2.5, _ -> true);
  private static final int SEEDS = 3;

  /** Whole km/h are cut down: by distance alone it would be 60 m after 10 km, 190 m after 30. */
  @Test
  void thePlaceIsTensOfMetresOffAfterTenAndThirtyKilometres() {
    for (int seed = 1; seed <= SEEDS; seed++) {
      List<Beside> told = drive(seed, 1, true);

      assertThat(at(told, 10_000).byDistance).as("seed %d", seed).isBetween(-90.0, -50.0);
      assertThat(at(told, 30_000).byDistance).as("seed %d", seed).isBetween(-240.0, -170.0);
      assertThat(at(told, 10_000).byRoute).as("seed %d", seed).isBetween(-40.0, 40.0);
      assertThat(at(told, 30_000).byRoute).as("seed %d", seed).isBetween(-50.0, 50.0);
    }
  }

  /** Worn tyres: what the grades show is believed against the distance. */
  @Test
  void gradesFindThePlaceWhereTheSpeedIsTwoPerCentLow() {
    for (int seed = 1; seed <= SEEDS; seed++) {
      List<Beside> told = drive(seed, 0.98, true);

      assertThat(at(told, 10_000).byDistance).as("seed %d", seed).isLessThan(-180);
      assertThat(at(told, 30_000).byDistance).as("seed %d", seed).isLessThan(-600);
      assertThat(at(told, 10_000).byRoute)
          .as("seed %d", seed)
          .isBetween(0.7 * at(told, 10_000).byDistance, 50.0);
      assertThat(at(told, 30_000).byRoute).as("seed %d", seed).isBetween(-120.0, 120.0);
    }
  }

  /** Without torque or mass there is the distance, and half a unit of speed. */
  @Test
  void whereNoGradeIsShownTheHalfUnitIsAddedAllTheSame() {
    List<Beside> told = drive(1, 1, false);

    assertThat(at(told, 10_000).byRoute).isBetween(-30.0, 30.0);
    assertThat(at(told, 30_000).byRoute).isBetween(-80.0, 80.0);
  }

  @Test
  void whoStandsStaysAtTheRoutesFirstPoint() {
    RouteByDistance sight = new RouteByDistance(RouteLine.of(ROUTE));
    for (int second = 0; second < 1000; second++) {
      sight.moved(second, 0);
    }
    assertThat(sight.metres()).isBetween(-0.1, 0.1);
    assertThat(((RoadAhead.Known) sight.ahead()).certain().lengthMetres()).isEqualTo(15_000);
  }

  @Test
  void behindTheRoutesEndNothingIsKnownAndWithoutElevationsNoGradeIs() {
    RoadSight sight = new RouteByDistance(RouteLine.of(ROUTE));
    sight.moved(1, 37_000);
    assertThat(sight.ahead()).isEqualTo(new RoadAhead.Unknown());

    RoadSight flat =
        new RouteByDistance(RouteLine.of(TourRoutes.withoutElevations(THERE_AND_BACK)));
    assertThat(flat.ahead()).isEqualTo(new RoadAhead.Ungraded());
  }

  @Test
  void whereElevationsAreMissingTheLookAheadEnds() {
    Route gap = TourRoutes.along(THERE_AND_BACK, 40, 0, metres -> metres < 4000 || metres > 9000);
    RoadSight sight = new RouteByDistance(RouteLine.of(gap));
    RoadAhead.Known ahead = (RoadAhead.Known) sight.ahead();
    assertThat(ahead.certain().lengthMetres()).isBetween(3700.0, 4000.0);
    sight.moved(1, 6000);
    assertThat(sight.ahead()).isEqualTo(new RoadAhead.Ungraded());
  }

  /** What place is told, metres off, by metres driven alone and by the route. */
  private record Beside(double metres, double byDistance, double byRoute) {}

  private static Beside at(List<Beside> told, double metres) {
    return told.stream().filter(each -> each.metres > metres).findFirst().orElseThrow();
  }

  private static List<Beside> drive(long seed, double speedShare, boolean showsGrade) {
    TourDrive drive =
        TourDrive.of(
            THERE_AND_BACK, seed, ReceiverQuality.usual(), Set.of(), TourDrive.Errors.USUAL);
    RouteByDistance sight = new RouteByDistance(RouteLine.of(ROUTE));
    DerivedChannels derived = new DerivedChannels(drive.vehicle());
    RoadWatch watch = new RoadWatch(Optional.of(sight));
    List<Beside> told = new ArrayList<>();
    double distance = 0;
    double speed = 0;
    int next = 0;
    for (TourDrive.Truth truth : drive.truth()) {
      long micros = Math.round(truth.seconds()) * 1_000_000;
      for (;
          next < drive.samples().size() && drive.samples().get(next).timeMicros() < micros;
          next++) {
        Sample sample = scaled(drive.samples().get(next), speedShare);
        if (!Channels.located().contains(sample.channel())) {
          speed = sample.channel().equals(Channels.VEHICLE_SPEED) ? sample.value() : speed;
          watch.accept(sample);
          derived.accept(sample);
        }
      }
      distance += speed / 3.6;
      derived.tick(micros).stream().filter(_ -> showsGrade).forEach(watch::accept);
      watch.second(micros, derived.second());
      double metres = truth.place().metres();
      told.add(new Beside(metres, distance - metres, sight.metres() - metres));
    }
    return told;
  }

  private static Sample scaled(Sample sample, double speedShare) {
    return sample.channel().equals(Channels.VEHICLE_SPEED)
        ? new Sample(
            sample.channel(),
            sample.timeMicros(),
            speedShare == 1 ? sample.value() : Math.floor((sample.value() + 0.5) * speedShare))
        : sample;
  }
}
