package steadypull.drive;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.RoadSight;
import steadypull.road.TourDrive;
import steadypull.road.TourRoutes;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.memory.RouteLine;
import steadypull.store.LibraryException;
import steadypull.store.ToldTours;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;

/** Prints what keeping the road ahead costs a trip: {@code mvn -q -Pbench}. */
@Tag("bench")
class RoadToldBenchTest {
  private static final long SECOND_MICROS = 1_000_000;

  @TempDir private Path folder;

  @Test
  void printOctetsForAnHourOfDriving() throws Exception {
    System.out.printf(Locale.ROOT, "%n| known from | events an hour | octets an hour |%n");
    try (TripLibrary library = TripLibrary.open(folder)) {
      print("own past", (_, reading) -> new RememberedRoad(reading), library);
      print("route", (tour, reading) -> new RouteAndMemory(route(tour), reading), library);
      for (Tour tour : Country.larkmoor().tours()) {
        for (int day = 1; day <= 3; day++) {
          ToldTours.keep(library, tour, day);
        }
      }
      ToldTours.learn(library);
      print("three passes", (_, reading) -> new RememberedRoad(reading), library);
      print("both", (tour, reading) -> new RouteAndMemory(route(tour), reading), library);
    }
  }

  private static RouteLine route(Tour tour) {
    return RouteLine.of(TourRoutes.along(tour, 40, 2.5, _ -> true));
  }

  private static void print(
      String name, BiFunction<Tour, RememberedRoad.Reading, RoadSight> sight, TripLibrary library) {
    long events = 0;
    long octets = 0;
    double hours = 0;
    for (Tour tour : Country.larkmoor().tours()) {
      TourDrive drive = TourDrive.of(tour, 9);
      RoadWatch watch = new RoadWatch(Optional.of(sight.apply(tour, reading(library))));
      DerivedChannels derived = new DerivedChannels(drive.vehicle());
      int next = 0;
      for (long micros = SECOND_MICROS; next < drive.samples().size(); micros += SECOND_MICROS) {
        while (next < drive.samples().size() && drive.samples().get(next).timeMicros() < micros) {
          Sample sample = drive.samples().get(next++);
          watch.accept(sample);
          derived.accept(sample);
        }
        Optional<TripEvent> height = watch.routeHeight(micros);
        derived.tick(micros).forEach(watch::accept);
        Optional<TripEvent> news = watch.second(micros, derived.second());
        for (TripEvent event : Stream.of(height, news).flatMap(Optional::stream).toList()) {
          events++;
          octets += event.detail().length();
        }
        hours += 1 / 3600.0;
      }
    }
    System.out.printf(Locale.ROOT, "| %s | %.0f | %.0f |%n", name, events / hours, octets / hours);
  }

  private static RememberedRoad.Reading reading(TripLibrary library) {
    return (place, metres, taker) -> {
      try {
        taker.accept(
            library.roads().tilesAround(place.latitudeDegrees(), place.longitudeDegrees(), metres));
      } catch (LibraryException unreadable) {
        throw new AssertionError(unreadable);
      }
    };
  }
}
