package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.demo.road.Road;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.TourDrive;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A trip's samples become passes that lie on the road. */
class PassTraceTest {
  @Test
  void aPassLiesOnTheRoadWithinAFewMetres() {
    TourDrive drive = TourDrive.of(Country.larkmoor().upTheQuarryBends(), 3);
    RoadPass pass = only(trace(drive));

    long beside =
        pass.points().stream()
            .filter(point -> point.place().isPresent())
            .filter(point -> apart(point, drive) > 3 * error(point))
            .count();
    assertThat(placed(pass)).isGreaterThan(200);
    assertThat(beside).isLessThan(placed(pass) / 25);
  }

  @Test
  void aTunnelLeavesNoPlaceButADistanceAndAGrade() {
    TourDrive drive = TourDrive.of(Country.larkmoor().overTheHarrow(), 3);
    RoadPass pass = only(trace(drive));
    List<PassPoint> inside =
        pass.points().stream()
            .filter(point -> Math.abs(truth(point, drive).metres() - 12_450) < 100)
            .toList();

    assertThat(inside).hasSizeGreaterThan(3).allMatch(point -> point.place().isEmpty());
    // speed in whole km/h, cut down, reads half a km/h low: 0.6 % at 80 km/h
    assertThat(pass.lengthMetres()).isCloseTo(travelled(drive), within(travelled(drive) * 0.012));
    assertThat(inside)
        .allSatisfy(
            point ->
                assertThat(point.grade() * 100)
                    .isCloseTo(truth(point, drive).gradePercent(), within(1.2)));
  }

  @Test
  void aTripWithoutReceiverHasPassesWithoutPlaces() {
    TourDrive drive = TourDrive.of(Country.larkmoor().toTheFell(), 1);
    PassTrace trace = new PassTrace(drive.vehicle());
    drive.samples().stream()
        .filter(sample -> !Channels.located().contains(sample.channel()))
        .forEach(trace::accept);

    assertThat(only(trace.finish()).points()).allMatch(point -> point.place().isEmpty());
  }

  @Test
  void silenceOfTheVehicleBreaksAPassInTwo() {
    TourDrive drive = TourDrive.of(Country.larkmoor().alongBrambleLane(), 1);
    PassTrace trace = new PassTrace(drive.vehicle());
    drive.samples().stream()
        .filter(sample -> Math.abs(sample.timeMicros() - 120_000_000L) > 15_000_000L)
        .forEach(trace::accept);

    assertThat(trace.finish()).hasSize(2);
  }

  /** Loggers that write a row each second write whole ones: a place at 7 s counts as any other. */
  @Test
  void placesAtWholeSecondsCount() {
    TourDrive drive = TourDrive.of(Country.larkmoor().alongBrambleLane(), 1);
    PassTrace rows = new PassTrace(drive.vehicle());
    drive.samples().stream()
        .map(
            sample ->
                new Sample(
                    sample.channel(), sample.timeMicros() / 1_000_000 * 1_000_000, sample.value()))
        .forEach(rows::accept);

    assertThat(placed(only(rows.finish()))).isCloseTo(placed(only(trace(drive))), within(3L));
  }

  /** The receiver has found its place when the link breaks, or the trip ends. */
  @Test
  void aFixInTheLastSecondAloneIsAPlace() {
    PassTrace trace = new PassTrace(Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR));
    for (long second = 0; second < 10; second++) {
      trace.accept(new Sample(Channels.VEHICLE_SPEED, second * 1_000_000, 90));
    }
    trace.accept(new Sample(Channels.LATITUDE, 9_200_000, -41.5));
    trace.accept(new Sample(Channels.LONGITUDE, 9_200_000, -118));

    assertThat(only(trace.finish()).points().getLast().place().orElseThrow().latitudeDegrees())
        .isEqualTo(-41.5);
  }

  private static long placed(RoadPass pass) {
    return pass.points().stream().filter(point -> point.place().isPresent()).count();
  }

  private static List<RoadPass> trace(TourDrive drive) {
    PassTrace trace = new PassTrace(drive.vehicle());
    drive.samples().forEach(trace::accept);
    return trace.finish();
  }

  private static RoadPass only(List<RoadPass> passes) {
    assertThat(passes).hasSize(1);
    return passes.getFirst();
  }

  private static Road.Place truth(PassPoint point, TourDrive drive) {
    return drive.truth().get((int) Math.round(point.seconds()) - 1).place();
  }

  private static double travelled(TourDrive drive) {
    return drive.truth().getLast().place().metres() - drive.truth().getFirst().place().metres();
  }

  private static double error(PassPoint point) {
    return point.place().orElseThrow().errorMetres();
  }

  /** Metres between where a point says it is and the truth of its second; 0 without a place. */
  private static double apart(PassPoint point, TourDrive drive) {
    Road.Place truth = truth(point, drive);
    FlatGround ground = FlatGround.around(truth.latitude(), truth.longitude());
    return point
        .place()
        .map(place -> ground.spot(place.latitudeDegrees(), place.longitudeDegrees()))
        .map(spot -> Math.hypot(spot.east(), spot.north()))
        .orElse(0.0);
  }
}
