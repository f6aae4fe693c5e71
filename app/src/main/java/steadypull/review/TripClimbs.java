package steadypull.review;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.StandardAtmosphere;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbCollection;
import steadypull.road.climb.ClimbFinder;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.ClimbRecognition;
import steadypull.road.climb.GeoBounds;
import steadypull.road.climb.KnownClimb;
import steadypull.road.climb.KnownClimbs;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.thermal.SustainablePower;
import steadypull.vehicle.Limit;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/**
 * The climbs of a stored trip. Immutable.
 *
 * @param climbs in the order of time; empty if there were none
 * @param onRollers stretches that pulled like climbs while the vehicle or the air pressure stayed:
 *     left out
 * @param undecided how many of the climbs may have been a dynamometer's load: no receiver told a
 *     place, and the air pressure does not decide
 * @param road how much could be told of the road, which says why there may be none
 */
public record TripClimbs(
    List<ClimbReview> climbs, int onRollers, int undecided, RoadKnowledge road) {
  /** A grade that errs by more hides a climb of 2 % among its errors. */
  private static final double LARGEST_ERROR = 0.015;

  /** How much a trip tells of its road. A closed set. */
  public enum RoadKnowledge {
    /** Grades, for half of the way or more. */
    GRADES,
    /** How far, but not how steep. */
    DISTANCE,
    /** The vehicle's speed was never told. */
    NOTHING
  }

  public TripClimbs {
    climbs = List.copyOf(climbs);
  }

  /**
   * Reads a trip and finds its climbs.
   *
   * @param tripId a whole id
   * @param known the climbs that are known already
   * @param codes reads what control units told from an event; empty if it tells nothing of codes
   */
  public static TripClimbs of(
      TripLibrary library,
      String tripId,
      KnownClimbs known,
      Function<TripEvent, Optional<TroubleCodes>> codes)
      throws LibraryException {
    Vehicle vehicle = library.vehicleOf(tripId);
    DriveTrace trace = new DriveTrace(vehicle);
    SustainablePower power = new SustainablePower(vehicle);
    library.replay(
        tripId,
        entry -> {
          switch (entry) {
            case TripEntry.OfSample(Sample sample) -> {
              trace.accept(sample);
              power.accept(sample);
            }
            case TripEntry.OfEvent(TripEvent event) ->
                codes.apply(event).ifPresent(told -> trace.accept(told, event.timeMicros()));
          }
        });
    List<RoadPass> passes = trace.finish();
    List<Climb> found = ClimbFinder.find(passes);
    List<RollerLoad.Ground> grounds = found.stream().map(climb -> ground(climb, trace)).toList();
    List<Climb> climbs = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      if (grounds.get(i) != RollerLoad.Ground.ROLLERS) {
        climbs.add(found.get(i));
      }
    }
    return new TripClimbs(
        reviews(climbs, vehicle, new Told(trace, power), known),
        Collections.frequency(grounds, RollerLoad.Ground.ROLLERS),
        Collections.frequency(grounds, RollerLoad.Ground.UNKNOWN),
        told(passes));
  }

  /** What a trip has shown, once it was looked at to its end. */
  private record Told(DriveTrace trace, SustainablePower power) {}

  private static RollerLoad.Ground ground(Climb climb, DriveTrace trace) {
    return RollerLoad.of(
        climb,
        trace.pressureFallKilopascals(
            TimeSpan.ofSeconds(climb.startSeconds(), climb.endSeconds())));
  }

  /** The climbs of this trip that nobody knew, each once, for the library to remember. */
  public List<KnownClimb> discovered() {
    return climbs.stream()
        .map(ClimbReview::identity)
        .flatMap(
            identity ->
                identity instanceof ClimbIdentity.New found
                    ? List.of(found.climb()).stream()
                    : List.<KnownClimb>of().stream())
        .toList();
  }

  private static List<ClimbReview> reviews(
      List<Climb> climbs, Vehicle vehicle, Told told, KnownClimbs known) {
    // A climb that is driven twice in one trip is known the second time.
    ClimbCollection here = new ClimbCollection(List.of());
    ClimbRecognition recognition = new ClimbRecognition(bounds -> both(known, here, bounds));
    List<ClimbReview> reviews = new ArrayList<>();
    for (Climb climb : climbs) {
      ClimbIdentity identity = recognition.identify(climb);
      if (identity instanceof ClimbIdentity.New found) {
        here.add(found.climb());
      }
      reviews.add(review(reviews.size() + 1, climb, identity, vehicle, told));
    }
    return reviews;
  }

  private static List<KnownClimb> both(KnownClimbs one, KnownClimbs other, GeoBounds bounds) {
    List<KnownClimb> both = new ArrayList<>(one.near(bounds));
    both.addAll(other.near(bounds));
    return both;
  }

  private static ClimbReview review(
      int number, Climb climb, ClimbIdentity identity, Vehicle vehicle, Told told) {
    DriveTrace trace = told.trace();
    TimeSpan span = TimeSpan.ofSeconds(climb.startSeconds(), climb.endSeconds());
    Map<Channel, Double> peaks = new LinkedHashMap<>();
    Map<Channel, Double> headroom = new LinkedHashMap<>();
    double kilopascals =
        trace.lowestKilopascals(span).orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS);
    for (Channel channel : Channels.thermal()) {
      trace.hottest(channel, span).ifPresent(celsius -> peaks.put(channel, celsius));
      Double peak = peaks.get(channel);
      if (peak != null) {
        vehicle
            .limit(channel, kilopascals)
            .map(Limit::celsius)
            .ifPresent(limit -> headroom.put(channel, limit - peak));
      }
    }
    return new ClimbReview(
        number,
        climb,
        identity,
        peaks,
        headroom,
        trace.deratedSeconds(span),
        trace.wheelKilowattHours(span),
        told.power().during(span.fromMicros(), span.toMicros()).flatMap(told.power()::kilowatts));
  }

  private static RoadKnowledge told(List<RoadPass> passes) {
    List<PassPoint> points = passes.stream().flatMap(pass -> pass.points().stream()).toList();
    long graded = points.stream().filter(point -> point.gradeError() <= LARGEST_ERROR).count();
    if (points.isEmpty()) {
      return RoadKnowledge.NOTHING;
    }
    return 2 * graded >= points.size() ? RoadKnowledge.GRADES : RoadKnowledge.DISTANCE;
  }
}
