package steadypull.exchange;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.grade.DerivedSeconds;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Vehicle;

/**
 * The samples of a trip of a library on their way into a file, as often as they are asked for. The
 * library must stay open. One thread.
 *
 * <p>Derived channels that the trip does not hold, because it was imported, are computed on the way
 * from its vehicle as it is known now; the library keeps what was measured and no more. Those that
 * it holds are never touched.
 */
public final class TripSamples implements SampleSource<LibraryException> {
  private final TripLibrary library;
  private final TripSummary trip;
  private final Optional<Vehicle> vehicle;
  private final Set<Channel> computed;

  private TripSamples(
      TripLibrary library, TripSummary trip, Optional<Vehicle> vehicle, Set<Channel> computed) {
    this.library = library;
    this.trip = trip;
    this.vehicle = vehicle;
    this.computed = computed;
  }

  /** What the trip holds and nothing else. */
  public static TripSamples held(TripLibrary library, TripSummary trip) {
    return new TripSamples(library, trip, Optional.empty(), Set.of());
  }

  /** What the trip holds, and the derived channels that it lacks, as far as they can be told. */
  public static TripSamples withDerived(TripLibrary library, TripSummary trip)
      throws LibraryException {
    return withDerived(library, trip, () -> {});
  }

  /**
   * The same.
   *
   * @param look runs again and again while the trip is looked through; what it throws comes through
   */
  public static TripSamples withDerived(TripLibrary library, TripSummary trip, Runnable look)
      throws LibraryException {
    Vehicle vehicle = library.vehicleOf(trip.id());
    Set<Channel> possible = new TreeSet<>(new DerivedChannels(vehicle).possible(trip.channels()));
    trip.channels().forEach(possible::remove);
    if (possible.isEmpty()) {
      return held(library, trip);
    }
    TripSamples looked = new TripSamples(library, trip, Optional.of(vehicle), possible);
    return new TripSamples(library, trip, Optional.of(vehicle), looked.found(look));
  }

  /** The channels of which there are samples: the trip's own, then those that are computed. */
  public List<Channel> channels() {
    return Stream.concat(trip.channels().stream(), computed.stream()).toList();
  }

  /** About how many samples there are: the trip's own, and one a second of those computed. */
  public long expected() {
    return trip.samples() + computed.size() * Math.round(trip.durationSeconds());
  }

  @Override
  public void pourInto(Consumer<Sample> taker) throws LibraryException {
    if (vehicle.isEmpty()) {
      replay(taker);
      return;
    }
    DerivedSeconds derived = new DerivedSeconds(vehicle.get());
    replay(
        sample -> {
          pour(derived.before(sample), taker);
          taker.accept(sample);
        });
    pour(derived.until(Math.round(trip.durationSeconds() * 1e6)), taker);
  }

  private void pour(List<Sample> derived, Consumer<Sample> taker) {
    for (Sample each : derived) {
      if (computed.contains(each.channel())) {
        taker.accept(each);
      }
    }
  }

  /** The computed channels of which there is a sample; reads until each has shown one. */
  private Set<Channel> found(Runnable look) throws LibraryException {
    Set<Channel> seen = new TreeSet<>();
    try {
      pourInto(
          sample -> {
            look.run();
            if (computed.contains(sample.channel()) && seen.add(sample.channel())) {
              stopIf(seen.size() == computed.size());
            }
          });
    } catch (AllSeen enough) {
      return seen;
    }
    return seen;
  }

  private static void stopIf(boolean isEnough) {
    if (isEnough) {
      throw new AllSeen();
    }
  }

  private void replay(Consumer<Sample> taker) throws LibraryException {
    library.replay(
        trip.id(),
        entry -> {
          if (entry instanceof TripEntry.OfSample(Sample sample)) {
            taker.accept(sample);
          }
        });
  }

  /** Ends a reading that has seen enough. */
  private static final class AllSeen extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }
}
