package steadypull.thermal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/**
 * Learns a vehicle's heat from a drive and tells what it can hold for ever: the highest power and
 * speed, and the hottest day, at which no channel settles above its limit less a headroom. By
 * bisection, for every draw of what has been learnt. One thread; deterministic.
 */
public final class SustainablePower {
  private static final long SECOND_MICROS = 1_000_000;

  /** With less driving under load nothing but the layout's belief would be told. */
  private static final double LEAST_LOADED_SECONDS = 120;

  private static final double LOADED_KILOWATTS = 20;

  /** Beyond this much more than the drive asked for, its maps of fuel and air are not believed. */
  private static final double BEYOND = 1.25;

  /** Bursts of some seconds are no power that the drive has shown. */
  private static final double HELD_SECONDS = 20;

  private static final double LEAST_KILOWATTS = 5;
  private static final double SLOWEST_METRES_PER_SECOND = 3;
  private static final double COLDEST_CELSIUS = -30;
  private static final double HOTTEST_CELSIUS = 55;
  private static final int HALVINGS = 12;

  private final Vehicle vehicle;
  private final LatestSamples samples = new LatestSamples();
  private final LoadMaps maps = new LoadMaps();
  private final LoadSensing sensing = new LoadSensing(maps);
  private final HeldLoad held = new HeldLoad();
  private final StoreSet stores;
  private final NavigableMap<Long, Load> driven = new TreeMap<>();
  private long nextMicros = SECOND_MICROS;
  private double loadedSeconds;
  private double smoothKilowatts;
  private double mostKilowatts;

  /** Of a vehicle, with what earlier trips have taught. */
  public SustainablePower(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.stores = new StoreSet(vehicle.layout(), vehicle.learnt());
  }

  /** Takes the next sample of the drive; times do not run backwards. */
  public void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      second(nextMicros);
      nextMicros += SECOND_MICROS;
    }
    samples.accept(sample);
    stores.accept(sample);
  }

  private void second(long timeMicros) {
    sensing
        .sense(samples, timeMicros, 1)
        .ifPresent(
            load -> {
              driven.put(timeMicros, load);
              held.accept(timeMicros / 1e6, load);
              stores.advance(timeMicros / 1e6, held.load().orElse(load));
              loadedSeconds += load.kilowatts() > LOADED_KILOWATTS ? 1 : 0;
              smoothKilowatts +=
                  (load.kilowatts() - smoothKilowatts) * -Math.expm1(-1 / HELD_SECONDS);
              mostKilowatts = Math.max(mostKilowatts, smoothKilowatts);
            });
  }

  /**
   * What a stretch of the drive was on average, in the gear that it was driven in; empty if nothing
   * told its power.
   *
   * @param fromMicros since trip start
   * @param toMicros since trip start, later
   */
  public Optional<SteadyLoad> during(long fromMicros, long toMicros) {
    Collection<Load> loads = driven.subMap(fromMicros, true, toMicros, true).values();
    double speed = mean(loads, Load::metresPerSecond);
    double rpm = mean(loads, Load::engineRpm);
    return speed < SLOWEST_METRES_PER_SECOND || rpm <= 0
        ? Optional.empty()
        : Optional.of(
            new SteadyLoad(
                speed,
                rpm / speed,
                mean(loads, Load::outsideCelsius),
                mean(loads, Load::outsideKilopascals),
                0));
  }

  private static double mean(Collection<Load> loads, ToDoubleFunction<Load> part) {
    return loads.stream().mapToDouble(part).average().orElse(0);
  }

  /**
   * The highest power at the wheels at a given speed, kW; empty if the drive has taught too little,
   * or no channel of it has a limit.
   */
  public Optional<Sustainable> kilowatts(SteadyLoad at) {
    double most = BEYOND * mostKilowatts;
    return highest(at, LEAST_KILOWATTS, most, kilowatts -> load(kilowatts, at))
        .map(found -> scaled(found, DerivedChannels.DRIVELINE_EFFICIENCY));
  }

  /**
   * The highest speed of a rig on a grade, m/s; empty likewise.
   *
   * @param at in whose gear, air and headroom; its speed does not count
   * @param road the rig
   * @param grade a fraction
   */
  public Optional<Sustainable> metresPerSecond(SteadyLoad at, RoadLoad road, double grade) {
    DoubleFunction<Load> load = speed -> load(engineKilowatts(road, speed, grade), at.at(speed));
    double fastest = SLOWEST_METRES_PER_SECOND;
    while (fastest < 40 && engineKilowatts(road, fastest, grade) < BEYOND * mostKilowatts) {
      fastest += 0.5;
    }
    return highest(at, SLOWEST_METRES_PER_SECOND, fastest, load);
  }

  /** The hottest outside air in which a power at the wheels is held at a speed, degC. */
  public Optional<Sustainable> outsideCelsius(SteadyLoad at, double wheelKilowatts) {
    double engine = wheelKilowatts / DerivedChannels.DRIVELINE_EFFICIENCY;
    return highest(at, COLDEST_CELSIUS, HOTTEST_CELSIUS, celsius -> load(engine, at.in(celsius)));
  }

  private static double engineKilowatts(RoadLoad road, double metresPerSecond, double grade) {
    return Math.max(0, road.kilowatts(metresPerSecond, grade))
        / DerivedChannels.DRIVELINE_EFFICIENCY;
  }

  private Load load(double kilowatts, SteadyLoad at) {
    double rpm = at.engineRpm();
    return new Load(
        kilowatts,
        rpm,
        at.metresPerSecond(),
        maps.fuelKilowatts(kilowatts, rpm),
        maps.airKilogramsPerSecond(kilowatts, rpm),
        at.outsideCelsius(),
        at.kilopascals());
  }

  private Optional<Sustainable> highest(
      SteadyLoad at, double least, double most, DoubleFunction<Load> load) {
    Map<Store, Double> limits = limits(at);
    if (loadedSeconds < LEAST_LOADED_SECONDS || limits.isEmpty() || most <= least) {
      return Optional.empty();
    }
    return Optional.of(among(SettledDraw.of(stores.estimates()), limits, least, most, load));
  }

  private Map<Store, Double> limits(SteadyLoad at) {
    Map<Store, Double> limits = new EnumMap<>(Store.class);
    for (ChannelEstimate estimate : stores.estimates()) {
      Store store = estimate.store();
      Optional<Limit> limit =
          stores.isHeard(store)
              ? vehicle.limit(store.channel(), at.kilopascals())
              : Optional.empty();
      limit.ifPresent(known -> limits.put(store, known.celsius() - at.headroomKelvin()));
    }
    return limits;
  }

  /** Over all draws; of a draw that no heat bounds the greatest counts, and the least of none. */
  private static Sustainable among(
      List<SettledDraw> draws,
      Map<Store, Double> limits,
      double least,
      double most,
      DoubleFunction<Load> load) {
    List<Double> values = new ArrayList<>();
    for (SettledDraw draw : draws) {
      values.add(highest(draw, limits, least, most, load).orElse(least));
    }
    values.sort(Double::compare);
    double middle = at(values, 0.5);
    if (middle >= most) {
      return new Sustainable.AtLeast(most);
    }
    if (middle <= least) {
      return new Sustainable.Nothing();
    }
    Store hottest = nearest(draws.getFirst().under(load.apply(middle)), limits);
    return new Sustainable.UpTo(at(values, 0.1), middle, at(values, 0.9), hottest.channel());
  }

  private static double at(List<Double> sorted, double level) {
    double place = level * (sorted.size() - 1);
    int under = (int) place;
    int over = Math.min(under + 1, sorted.size() - 1);
    return sorted.get(under) + (place - under) * (sorted.get(over) - sorted.get(under));
  }

  /** The highest value of one draw; empty if even the least is too much. */
  static OptionalDouble highest(
      SettledDraw draw,
      Map<Store, Double> limits,
      double least,
      double most,
      DoubleFunction<Load> load) {
    if (!holds(draw, limits, load.apply(least))) {
      return OptionalDouble.empty();
    }
    if (holds(draw, limits, load.apply(most))) {
      return OptionalDouble.of(most);
    }
    double good = least;
    double bad = most;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (good + bad) / 2;
      if (holds(draw, limits, load.apply(middle))) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return OptionalDouble.of((good + bad) / 2);
  }

  private static boolean holds(SettledDraw draw, Map<Store, Double> limits, Load load) {
    double[] settled = draw.under(load);
    return limits.entrySet().stream()
        .allMatch(limit -> settled[limit.getKey().index()] <= limit.getValue());
  }

  private static Store nearest(double[] settled, Map<Store, Double> limits) {
    return limits.entrySet().stream()
        .max(
            (one, other) ->
                Double.compare(
                    settled[one.getKey().index()] - one.getValue(),
                    settled[other.getKey().index()] - other.getValue()))
        .orElseThrow()
        .getKey();
  }

  private static Sustainable scaled(Sustainable found, double factor) {
    return switch (found) {
      case Sustainable.UpTo upTo ->
          new Sustainable.UpTo(
              upTo.p10() * factor, upTo.p50() * factor, upTo.p90() * factor, upTo.channel());
      case Sustainable.AtLeast atLeast -> new Sustainable.AtLeast(atLeast.value() * factor);
      case Sustainable.Nothing nothing -> nothing;
    };
  }
}
