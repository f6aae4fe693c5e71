package steadypull.thermal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiConsumer;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.LearntHeat;

/**
 * The stores of one vehicle: those whose channel was heard, and the hidden ones without which they
 * could not be computed. Pipeline thread only.
 */
final class StoreSet {
  private final CoolingLayout layout;
  private final LearntHeat learnt;
  private final Map<Store, ChannelEstimate> estimates = new EnumMap<>(Store.class);
  private final Map<Store, Double> readings = new EnumMap<>(Store.class);
  private final Set<Store> heard = EnumSet.noneOf(Store.class);
  private BiConsumer<ChannelEstimate, Observation> watcher = (_, _) -> {};

  /** Of a vehicle of which nothing is known but its layout. */
  StoreSet(CoolingLayout layout) {
    this(layout, LearntHeat.NOTHING);
  }

  /** Of a vehicle whose earlier trips have taught something. */
  StoreSet(CoolingLayout layout, LearntHeat learnt) {
    this.layout = layout;
    this.learnt = learnt;
  }

  /** Tells every moment of every store from now on, before it is learnt from. */
  void watch(BiConsumer<ChannelEstimate, Observation> taker) {
    watcher = taker;
  }

  /** Takes a sample if it shows a store's temperature. */
  void accept(Sample sample) {
    of(sample.channel())
        .ifPresent(
            store -> {
              heard.add(store);
              readings.put(store, sample.value());
            });
  }

  /** The store that a channel shows, if it shows one. */
  static Optional<Store> of(Channel channel) {
    for (Store store : Store.values()) {
      if (store.channel().equals(channel)) {
        return Optional.of(store);
      }
    }
    return Optional.empty();
  }

  /** Whether the store's channel has ever been heard. */
  boolean isHeard(Store store) {
    return heard.contains(store);
  }

  /**
   * Whether every store that decides a store's temperature has been heard. Air before the cooler
   * follows load; that after it only bends it.
   */
  boolean hasInputs(Store store) {
    return store == Store.CHARGE_INLET || heard.containsAll(inputs(store));
  }

  /** Advances every store to a moment with the readings that came since the last. */
  void advance(double seconds, Load load) {
    for (Store store : needed()) {
      estimates.computeIfAbsent(
          store,
          each -> new ChannelEstimate(each, balance(each), learnt, seconds, load.outsideCelsius()));
    }
    double[] around = new double[Store.COUNT];
    estimates.values().forEach(each -> around[each.store().index()] = each.celsius());
    for (ChannelEstimate estimate : estimates.values()) {
      Double value = readings.get(estimate.store());
      OptionalDouble reading = value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
      estimate
          .moment(seconds, load, around, reading)
          .ifPresent(moment -> watcher.accept(estimate, moment));
      estimate.advance(seconds, load, around, reading);
    }
    readings.clear();
  }

  /** The estimates, in the order in which heat flows. */
  Collection<ChannelEstimate> estimates() {
    return estimates.values();
  }

  /** The filtered temperature of a store, or empty before its first advance. */
  OptionalDouble celsius(Store store) {
    ChannelEstimate estimate = estimates.get(store);
    return estimate == null ? OptionalDouble.empty() : OptionalDouble.of(estimate.celsius());
  }

  private List<Store> needed() {
    Set<Store> needed = EnumSet.copyOf(List.of(Store.values()));
    needed.retainAll(heard);
    for (Store store : heard) {
      needed.addAll(inputs(store));
    }
    return new ArrayList<>(needed);
  }

  private List<Store> inputs(Store store) {
    return switch (store) {
      case CHARGE_INLET, CHARGE_AIR, CHARGE_COOLANT ->
          layout == CoolingLayout.WATER_TO_AIR || store == Store.CHARGE_COOLANT
              ? List.of(Store.CHARGE_INLET, Store.CHARGE_AIR, Store.CHARGE_COOLANT)
              : List.of(Store.CHARGE_INLET, Store.CHARGE_AIR);
      case ENGINE_OIL, TRANSMISSION_FLUID -> List.of(Store.ENGINE_COOLANT);
      case EXHAUST -> List.of(Store.CHARGE_AIR, Store.CHARGE_INLET);
      case ENGINE_COOLANT -> List.of();
    };
  }

  private HeatBalance balance(Store store) {
    return switch (store) {
      case CHARGE_INLET -> new CompressorOutlet();
      case CHARGE_AIR -> new ChargeAir(layout);
      case CHARGE_COOLANT -> new ChargeCoolant();
      case ENGINE_COOLANT -> new EngineCoolant();
      case ENGINE_OIL -> new EngineOil();
      case TRANSMISSION_FLUID -> new TransmissionFluid();
      case EXHAUST -> new ExhaustGas();
    };
  }
}
