package steadypull.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/**
 * What a finished trip says of its vehicle's heat, by itself: the same models and filters as on the
 * drive, begun from the layout's belief, whatever the vehicle knew then. So each trip counts once,
 * in whatever order trips are looked at. One thread; deterministic.
 */
public final class HeatLessons {
  private static final long SECOND_MICROS = 1_000_000;
  private static final double LOADED_KILOWATTS = 20;

  /** With less driving under load a trip says nothing that its weather would not drown. */
  private static final double LEAST_LOADED_SECONDS = 300;

  /** The spread has to have come down to this share of the layout's for a trip to have told. */
  private static final double MOST_SPREAD_LEFT = 0.8;

  /** The layout's belief holds within this many spreads; beyond it a trip tells no number. */
  private static final double FARTHEST_SPREADS = 2.5;

  private final LatestSamples samples = new LatestSamples();
  private final LoadSensing sensing = new LoadSensing(new LoadMaps());
  private final StoreSet stores;
  private long nextMicros = SECOND_MICROS;
  private double loadedSeconds;

  /** Of one trip of a vehicle. */
  public HeatLessons(Vehicle vehicle) {
    stores = new StoreSet(vehicle.layout());
  }

  /** Takes the next sample; times do not run backwards. */
  public void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      second(nextMicros);
      nextMicros += SECOND_MICROS;
    }
    samples.accept(sample);
    stores.accept(sample);
  }

  private void second(long timeMicros) {
    Optional<Load> load = sensing.sense(samples, timeMicros, 1);
    load.ifPresent(
        known -> {
          stores.advance(timeMicros / 1e6, known);
          loadedSeconds += known.kilowatts() > LOADED_KILOWATTS ? 1 : 0;
        });
  }

  /** What the trip has told up to now. */
  public TripHeat finish() {
    if (loadedSeconds < LEAST_LOADED_SECONDS) {
      return TripHeat.NOTHING;
    }
    List<HeatTold> told = new ArrayList<>();
    for (ChannelEstimate estimate : stores.estimates()) {
      if (stores.isHeard(estimate.store())) {
        tell(estimate, told);
      }
    }
    return new TripHeat(loadedSeconds / 3600, told, List.of());
  }

  private static void tell(ChannelEstimate estimate, List<HeatTold> told) {
    List<HeatQuantity> quantities = StoreQuantities.of(estimate.store(), estimate.balance());
    double[] state = estimate.state();
    double[] variances = estimate.variances();
    for (int i = 0; i < quantities.size(); i++) {
      int row = StoreProcess.FIRST_COORDINATE + i;
      without(quantities.get(i), state[row], variances[row]).ifPresent(told::add);
    }
  }

  /** Takes the layout's belief, with which the filter began, out of what it ended with. */
  private static Optional<HeatTold> without(
      HeatQuantity quantity, double coordinate, double variance) {
    double before = quantity.spread() * quantity.spread();
    if (variance > MOST_SPREAD_LEFT * MOST_SPREAD_LEFT * before) {
      return Optional.empty();
    }
    double information = 1 / variance - 1 / before;
    double alone = (coordinate / variance - quantity.usual() / before) / information;
    double farthest = FARTHEST_SPREADS * quantity.spread();
    return Optional.of(
        new HeatTold(
            quantity,
            Math.clamp(alone, quantity.usual() - farthest, quantity.usual() + farthest),
            1 / Math.sqrt(information)));
  }
}
