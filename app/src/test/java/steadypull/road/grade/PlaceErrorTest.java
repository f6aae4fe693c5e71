package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Road;
import steadypull.demo.road.Tour;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.TourDrive;

/** The error of a place that is told is the one that is made, whatever the receiver. */
class PlaceErrorTest {
  private static final List<Tour> TOURS = Country.larkmoor().tours();

  @Test
  void aUsualReceiversErrorIsToldAsItIsMade() {
    assertIsHonest(errors(ReceiverQuality.usual()), 2, 3.2);
  }

  /** Such a receiver errs by 5 m to each side for most of a minute, and nobody tells. */
  @Test
  void aPoorReceiversErrorIsToldAsItIsMade() {
    assertIsHonest(errors(ReceiverQuality.poor()), 4.8, 7);
  }

  /** Of errors as told 68 and 95 % lie within one and two standard deviations. */
  private static void assertIsHonest(List<Sideways> errors, double least, double most) {
    assertThat(errors).hasSizeGreaterThan(3000);
    assertThat(share(errors, 1)).isBetween(0.63, 0.80);
    assertThat(share(errors, 2)).isBetween(0.94, 0.995);
    double told = Math.sqrt(errors.stream().mapToDouble(e -> e.told * e.told).average().orElse(0));
    assertThat(told).isBetween(least, most);
  }

  private static double share(List<Sideways> errors, double deviations) {
    return errors.stream().filter(error -> error.made < deviations * error.told).count()
        / (double) errors.size();
  }

  private record Sideways(double made, double told) {}

  private static List<Sideways> errors(ReceiverQuality quality) {
    List<Sideways> errors = new ArrayList<>();
    long seed = 11;
    for (Tour tour : TOURS) {
      for (int drives = 0; drives < 2; drives++) {
        TourDrive drive = TourDrive.of(tour, seed++, quality, Set.of());
        PassTrace trace = new PassTrace(drive.vehicle());
        drive.samples().forEach(trace::accept);
        for (RoadPass pass : trace.finish()) {
          pass.points().forEach(point -> add(point, tour, drive, errors));
        }
      }
    }
    return errors;
  }

  private static void add(PassPoint point, Tour tour, TourDrive drive, List<Sideways> errors) {
    double metres = drive.truth().get((int) Math.round(point.seconds()) - 1).place().metres();
    Road.Place here = tour.at(metres);
    Road.Place next = tour.at(metres + 1);
    FlatGround ground = FlatGround.around(here.latitude(), here.longitude());
    FlatGround.Spot ahead = ground.spot(next.latitude(), next.longitude());
    point
        .place()
        .ifPresent(
            place -> {
              FlatGround.Spot told = ground.spot(place.latitudeDegrees(), place.longitudeDegrees());
              double across = told.north() * ahead.east() - told.east() * ahead.north();
              errors.add(
                  new Sideways(
                      Math.abs(across) / Math.hypot(ahead.east(), ahead.north()),
                      place.errorMetres()));
            });
  }
}
