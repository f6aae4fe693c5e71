package steadypull.thermal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.vehicle.CoolingLayout;

/**
 * What a finished trip says of its vehicle's stores: fed with the trip's samples in their order and
 * a tick for every whole second, as the live drive was, it gives heat capacities and conductances
 * with intervals, from which a change of the vehicle can be told from the weather. Holds some 3 kB
 * for each second of a trip until its end. Deterministic; one thread.
 */
public final class TripIdentification {
  private static final double MICROS_PER_SECOND = 1e6;
  private static final double LONGEST_STEP_SECONDS = 10;

  /** A store that was heard for less than this says nothing (estimated). */
  private static final int LEAST_MOMENTS = 120;

  private record Heard(ChannelEstimate start, List<Observation> moments) {}

  private final LatestSamples samples = new LatestSamples();
  private final LoadSensing sensing = new LoadSensing(new LoadMaps());
  private final HeldLoad heldLoad = new HeldLoad();
  private final StoreSet stores;
  private final Map<Store, Heard> heard = new EnumMap<>(Store.class);
  private double lastSeconds = -1;

  /** Nothing is known of the vehicle but how its charge air is cooled. */
  public TripIdentification(CoolingLayout layout) {
    stores = new StoreSet(layout);
    stores.watch(
        (estimate, moment) ->
            heard
                .computeIfAbsent(
                    estimate.store(), _ -> new Heard(estimate.fresh(), new ArrayList<>()))
                .moments()
                .add(moment));
  }

  /** Takes a sample; times do not run backwards. Derived channels are left aside. */
  public void accept(Sample sample) {
    if (!Channels.derived().contains(sample.channel())) {
      samples.accept(sample);
      stores.accept(sample);
    }
  }

  /** Moves on to a whole second of the trip, microseconds since its start. */
  public void tick(long timeMicros) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    double span = lastSeconds < 0 ? 1 : Math.min(seconds - lastSeconds, LONGEST_STEP_SECONDS);
    lastSeconds = seconds;
    sensing.sense(samples, timeMicros, span).ifPresent(load -> heldLoad.accept(seconds, load));
    heldLoad.load().ifPresent(load -> stores.advance(seconds, load));
  }

  /**
   * What the trip says of the charge coolant's circuit and of the engine's, as far as they were
   * heard; empty if neither was for two minutes.
   */
  public List<StoreBelief> beliefs() {
    List<StoreBelief> beliefs = new ArrayList<>();
    for (Store store : heard.keySet()) {
      if (stores.isHeard(store)) {
        belief(store).ifPresent(beliefs::add);
      }
    }
    return beliefs;
  }

  private Optional<StoreBelief> belief(Store store) {
    return switch (store) {
      case CHARGE_COOLANT ->
          belief(store, ChargeCoolant.JOULES_PER_KELVIN, ChargeCoolant.WATTS_PER_KELVIN);
      case ENGINE_COOLANT ->
          belief(store, EngineCoolant.JOULES_PER_KELVIN, EngineCoolant.WATTS_PER_KELVIN);
      // Known by where they settle and how fast alone; their heat is not measured.
      case CHARGE_INLET, CHARGE_AIR, ENGINE_OIL, TRANSMISSION_FLUID, EXHAUST -> Optional.empty();
    };
  }

  private Optional<StoreBelief> belief(Store store, int joules, int watts) {
    Heard all = heard.get(store);
    if (all == null || all.moments().size() < LEAST_MOMENTS) {
      return Optional.empty();
    }
    ChannelEstimate whole = all.start().smoothed(all.moments());
    return Optional.of(new StoreBelief(store.channel(), whole.belief(joules), whole.belief(watts)));
  }

  /** What the live filter believed at the end; for comparison. */
  Belief live(Store store, int index) {
    return stores.estimates().stream()
        .filter(each -> each.store() == store)
        .findFirst()
        .orElseThrow()
        .belief(index);
  }
}
