package steadypull.store;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import steadypull.channel.Channels;
import steadypull.road.RoadPass;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbFinder;
import steadypull.road.grade.PassTrace;
import steadypull.road.memory.RoadMemory;
import steadypull.store.LibraryException.Reason;
import steadypull.store.TileDraft.UnreadableTile;
import steadypull.vehicle.Vehicle;

/**
 * Learns roads from trips that have ended, each trip once: that it was learned is kept together
 * with what was learned, so that a program that is killed between leaves the trip waiting. A trip
 * at which the tracing fails is left out and told, the others go on. Any thread; the work is done
 * on the caller's.
 */
final class RoadLearning implements Learning {
  private final TripLibrary library;
  private final LibraryConnection connection;
  private final Function<Vehicle, PassTrace> tracing;
  private final UnlearntTrips unlearnt = new UnlearntTrips("learn the roads");

  /** Whether learning is to end: the trip under work waits for the next time. */
  private volatile boolean isStopped;

  RoadLearning(TripLibrary library, LibraryConnection connection) {
    this(library, connection, PassTrace::new);
  }

  /** The same with another way to trace a vehicle's trips. */
  RoadLearning(
      TripLibrary library, LibraryConnection connection, Function<Vehicle, PassTrace> tracing) {
    this.library = library;
    this.connection = connection;
    this.tracing = tracing;
  }

  int waiting() throws LibraryException {
    return connection.ask("count the trips whose roads are not learned", RoadRows::waitingCount);
  }

  @Override
  public boolean next() throws LibraryException {
    return nextTrip().isPresent();
  }

  /** Learns from the oldest trip that waits; empty if none does, or if learning is to end. */
  Optional<LearnedTrip> nextTrip() throws LibraryException {
    Optional<RoadRows.Waiting> waiting = firstWaiting();
    while (waiting.isPresent()) {
      RoadRows.Waiting trip = waiting.get();
      Optional<LearnedTrip> learned = learn(trip);
      if (!unlearnt.has(trip.origin())) {
        return learned;
      }
      waiting = firstWaiting();
    }
    return Optional.empty();
  }

  private Optional<RoadRows.Waiting> firstWaiting() throws LibraryException {
    return isStopped
        ? Optional.empty()
        : connection.ask(
            "find a trip whose roads are not learned",
            handle -> RoadRows.firstWaiting(handle, unlearnt));
  }

  /** What to tell of trips whose roads could not be learned since the library was opened. */
  List<String> unlearnt() {
    return unlearnt.told();
  }

  @Override
  public void stop() {
    isStopped = true;
  }

  private Optional<LearnedTrip> learn(RoadRows.Waiting trip) throws LibraryException {
    try {
      return Optional.of(new LearnedTrip(trip.tripId(), learn(trip, passes(trip.tripId()))));
    } catch (LearningStopped e) {
      return Optional.empty();
    } catch (UnreadableTile e) {
      throw e.fault;
    } catch (RuntimeException fault) {
      // One trip that cannot be traced must not end learning for all others; it is told.
      unlearnt.add(trip.origin(), trip.tripId(), fault);
      return Optional.empty();
    }
  }

  private int learn(RoadRows.Waiting trip, List<RoadPass> passes) throws LibraryException {
    LocalDate day = day(trip.tripId());
    while (true) {
      List<QuietPlace> quiet = quietPlaces();
      List<RoadPass> outside = new QuietPasses(quiet).outside(passes);
      TileDraft draft = new TileDraft(connection);
      RoadMemory memory = new RoadMemory(draft);
      outside.forEach(pass -> memory.learn(pass, day));
      if (isKept(trip, quiet, outside, draft)) {
        return outside.size();
      }
    }
  }

  /** False if somebody else has learned or forgotten something meanwhile; nothing is kept then. */
  private boolean isKept(
      RoadRows.Waiting trip, List<QuietPlace> quiet, List<RoadPass> passes, TileDraft draft)
      throws LibraryException {
    List<Climb> climbs = ClimbFinder.find(passes);
    return connection.change(
        "keep the roads of trip " + trip.tripId(),
        handle -> {
          if (!RoadRows.isWaiting(handle, trip.origin())) {
            return true;
          }
          boolean isKept = RoadRows.quietPlaces(handle).equals(quiet) && draft.keep(handle);
          if (isKept) {
            ClimbRows.saveNew(handle, climbs);
            RoadRows.learned(handle, trip.origin(), passes.size());
          }
          return isKept;
        });
  }

  /** A trip that cannot be read teaches nothing. */
  private List<RoadPass> passes(String tripId) throws LibraryException {
    try {
      TripSummary trip = library.find(tripId);
      return trip.channels().contains(Channels.LATITUDE) ? traced(tripId) : List.of();
    } catch (LibraryException e) {
      if (e.reason() == Reason.DAMAGED) {
        return List.of();
      }
      throw e;
    }
  }

  private List<RoadPass> traced(String tripId) throws LibraryException {
    PassTrace trace = tracing.apply(library.vehicleOf(tripId));
    library.replay(
        tripId,
        entry -> {
          if (isStopped) {
            throw new LearningStopped();
          }
          if (entry instanceof TripEntry.OfSample(var sample)) {
            trace.accept(sample);
          }
        });
    return trace.finish().stream().filter(RoadLearning::isLocated).toList();
  }

  private static boolean isLocated(RoadPass pass) {
    return pass.points().stream().anyMatch(point -> point.place().isPresent());
  }

  private List<QuietPlace> quietPlaces() throws LibraryException {
    return connection.ask("list the quiet places", RoadRows::quietPlaces);
  }

  private LocalDate day(String tripId) throws LibraryException {
    return LocalDate.ofInstant(library.find(tripId).start(), ZoneOffset.UTC);
  }

  /** Ends the reading of a trip. */
  @SuppressWarnings("serial") // never serialised
  private static final class LearningStopped extends RuntimeException {
    LearningStopped() {
      super("learning was to end", null, false, false);
    }
  }
}
