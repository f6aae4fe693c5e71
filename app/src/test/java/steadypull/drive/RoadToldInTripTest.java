package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceJson;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Country;
import steadypull.demo.road.Course;
import steadypull.demo.road.Road;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.TourDrive;
import steadypull.road.memory.RouteLine;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.ToldTours;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.thermal.Forecast;

/**
 * Drives that knew the road ahead, run again from what their trips have kept: word for word the
 * same, whatever was learned or forgotten since.
 */
@Execution(ExecutionMode.CONCURRENT)
class RoadToldInTripTest {
  private static final String HOT = "demo:long-hot-grade?speed=20&start=300";
  private static final String RECEIVER = "demo-receiver:long-hot-grade?speed=20&start=300";

  @TempDir private Path folder;

  @Test
  void aDriveAlongARouteIsRepeatedWithoutTheRoute() throws Exception {
    Told live = new Told();
    try (DemoDrives demo = new DemoDrives(folder)) {
      LiveDrives desk = demo.desk().listeningTo(RECEIVER).following(RouteLine.of(kestrelRange()));
      String trip = drive(desk, live);

      assertThat(live.roads).as("along the route").anyMatch(RoadAhead.Known.class::isInstance);
      assertThat(live.advice).isNotEmpty();
      assertThat(live.routeHeights())
          .as("each 150 m, where the vehicle is known to be on it")
          .isNotEmpty();
      assertSameAgain(demo.library(), trip, live);
    }
  }

  @Test
  void aDriveAlongARememberedRoadIsRepeatedAfterItWasForgotten() throws Exception {
    Told first = new Told();
    Told second = new Told();
    try (DemoDrives demo = new DemoDrives(folder)) {
      LiveDrives desk = demo.desk().listeningTo(RECEIVER);
      String firstTrip = drive(desk, first);
      ToldTours.learn(demo.library());
      String secondTrip = drive(desk, second);
      demo.library().roads().forgetAll();

      assertThat(first.roads)
          .as("nobody was here before")
          .noneMatch(RoadAhead.Known.class::isInstance);
      assertThat(second.roads)
          .as("the first drive was")
          .anyMatch(RoadAhead.Known.class::isInstance);
      assertSameAgain(demo.library(), firstTrip, first);
      assertSameAgain(demo.library(), secondTrip, second);
    }
  }

  @Test
  void aDriveBackAlongItsOwnRoadIsRepeated() throws Exception {
    TourDrive tour = TourDrive.of(Country.larkmoor().turnedAround(), 1);
    try (TripLibrary library = TripLibrary.open(folder)) {
      Told live = new Told();
      String trip =
          keep(
              library,
              tour,
              new RememberedRoad((place, metres, taker) -> taker.accept(Map.of())),
              live);

      assertThat(live.roads)
          .contains(new RoadAhead.Unknown())
          .anyMatch(RoadAhead.Known.class::isInstance);
      assertSameAgain(library, trip, live);
    }
  }

  /** Trips of programs that kept nothing of the road ahead go on being judged without it. */
  @Test
  void aTripThatKeptNothingOfTheRoadIsJudgedWithoutOne() throws Exception {
    TourDrive tour = TourDrive.of(Country.larkmoor().turnedAround(), 1);
    try (TripLibrary library = TripLibrary.open(folder)) {
      Told unknown = new Told();
      keep(library, tour, new UnknownRoad(), unknown);
      String older = ToldTours.keep(library, tour, 2);
      Told again = again(library, older);

      assertThat(again.forecasts).isEqualTo(unknown.forecasts).isNotEmpty();
      assertThat(again.roads).containsOnly(new RoadAhead.Unknown());
    }
  }

  private static String drive(LiveDrives desk, Told live) throws Exception {
    DriveEnd end = new DriveEnd(Optional.of(java.time.Duration.ofSeconds(330)), true);
    return desk.begin(DemoDrives.request(HOT, end), live).outcome().join().tripId().orElseThrow();
  }

  private static void assertSameAgain(TripLibrary library, String trip, Told live)
      throws LibraryException {
    Told again = again(library, trip);
    assertThat(again.advice).isEqualTo(live.advice);
    assertThat(again.forecasts).isEqualTo(live.forecasts).isNotEmpty();
    // The wait for the first reading belongs to no trip.
    List<RoadAhead> roads =
        live.roads.subList(live.roads.size() - again.roads.size(), live.roads.size());
    assertThat(again.roads).usingRecursiveComparison().isEqualTo(roads);
    assertThat(again.entries).isEqualTo(live.entries);
    assertThat(keptEntries(library, trip)).isEqualTo(live.entries);
  }

  private static Told again(TripLibrary library, String trip) throws LibraryException {
    Told again = new Told();
    new Replay(DemoDrives.ENGLISH.setup(library.vehicleOf(trip), true), again)
        .run(library, library.find(trip));
    return again;
  }

  private static List<TripEntry> keptEntries(TripLibrary library, String trip)
      throws LibraryException {
    List<TripEntry> kept = new ArrayList<>();
    library.replay(trip, kept::add);
    return kept;
  }

  /** Drives a tour past somebody who knows roads, and keeps what comes of it. */
  private static String keep(TripLibrary library, TourDrive tour, RoadSight sight, Told live)
      throws LibraryException {
    DrivePipeline pipeline =
        new DrivePipeline(
            DemoDrives.ENGLISH.setup(tour.vehicle(), true),
            DemoDrives.START,
            Optional.of(sight),
            live);
    for (Sample sample : tour.samples()) {
      pipeline.accept(new TripEntry.OfSample(sample));
    }
    NewTrip trip = new NewTrip(tour.vehicle(), DemoDrives.START, "", "test", "0.1.0");
    try (TripRecorder recorder = library.begin(trip)) {
      for (TripEntry entry : live.entries) {
        switch (entry) {
          case TripEntry.OfSample(Sample sample) -> recorder.append(sample);
          case TripEntry.OfEvent(TripEvent event) -> recorder.append(event);
        }
      }
      recorder.seal(pipeline.nowMicros());
      return recorder.tripId();
    }
  }

  private static Route kestrelRange() {
    Course.OnRoad course =
        (Course.OnRoad) DemoWorld.scenario("long-hot-grade").orElseThrow().course();
    Road road = (Road) course.road();
    List<RoutePoint> points = new ArrayList<>();
    for (double metres = 0; metres < road.length(); metres += 40) {
      Road.Place place = road.at(metres);
      points.add(
          new RoutePoint(
              place.latitude(),
              place.longitude(),
              OptionalDouble.of(place.altitude()),
              Optional.empty()));
    }
    return new Route("", List.of(RouteSegment.of(points.toArray(RoutePoint[]::new))));
  }

  /** All that a pipeline brings forth, second by second, in words. */
  private static final class Told implements PipelineOutput {
    private final List<String> advice = new ArrayList<>();
    private final List<String> forecasts = new ArrayList<>();
    private final List<RoadAhead> roads = new ArrayList<>();
    private final List<TripEntry> entries = new ArrayList<>();

    /** What the grade had from a route. */
    List<TripEvent> routeHeights() {
      return entries.stream()
          .filter(TripEntry.OfEvent.class::isInstance)
          .map(entry -> ((TripEntry.OfEvent) entry).event())
          .filter(event -> event.kind() == TripEvent.Kind.ROAD)
          .filter(event -> RoadNews.routeHeight(event).isPresent())
          .toList();
    }

    @Override
    public void entry(TripEntry entry) {
      entries.add(entry);
    }

    @Override
    public void advice(steadypull.advice.AdviceEvent event) {
      advice.add(AdviceJson.event(event));
    }

    @Override
    public void forecast(Forecast forecast) {
      forecasts.addAll(AdviceJson.forecast(forecast));
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      roads.add(snapshot.road().ahead());
    }
  }
}
