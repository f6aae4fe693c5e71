package steadypull.thermal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;
import steadypull.road.RoadAhead;
import steadypull.road.grade.DerivedChannels;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/**
 * The forecaster of one drive: small physical models with inputs, learnt while driving, run ahead
 * as an ensemble. Pipeline thread only; deterministic.
 */
public final class ThermalForecaster implements Forecaster {
  private static final double MICROS_PER_SECOND = 1e6;

  /** Ticks farther apart than this are a gap: nothing is learnt about load across it. */
  private static final double LONGEST_STEP_SECONDS = 10;

  /**
   * So long after the last word of load a channel's own course is of the time without: it has seen
   * its own minute.
   */
  private static final double POWER_FORGOTTEN_SECONDS = 60;

  /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  /**
   * The reference torque is indicated torque: friction takes 6 to 10 %, and few engines reach it in
   * use (common practice, no source).
   */
  private static final double SHARE_OF_REFERENCE = 0.75;

  /** A course that stands alone has its own learnt wander; so much more at most (estimated). */
  private static final double WIDEST_ALONE = 1.5;

  private final Vehicle vehicle;
  private final LatestSamples samples = new LatestSamples();
  private final ChannelPace pace = new ChannelPace();
  private final DerivedChannels derived;
  private final LoadMaps maps = new LoadMaps();
  private final LoadSensing sensing = new LoadSensing(maps);
  private final HeldLoad heldLoad = new HeldLoad();
  private final LoadSpread loadSpread = new LoadSpread();
  private final Learning learning = new Learning();
  private final StoreSet stores;
  private final Ensemble ensemble = new Ensemble();
  private final Map<Store, BandCalibration> calibrations = new EnumMap<>(Store.class);
  private final PlateauSet plateaus = new PlateauSet(HorizonGrid.secondsAhead());

  private final RoadOutlook roads;

  private OptionalDouble grade = OptionalDouble.empty();
  private Optional<Load> present = Optional.empty();
  private boolean isLoadKnown;
  private long lastTickMicros = -1;

  /** A forecaster that knows nothing of this vehicle yet but its layout, limits and rig. */
  public ThermalForecaster(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.derived = new DerivedChannels(vehicle);
    this.stores = new StoreSet(vehicle.layout());
    this.roads = new RoadOutlook(maps);
    for (Store store : Store.values()) {
      calibrations.put(store, new BandCalibration());
    }
  }

  @Override
  public void accept(RoadAhead ahead) {
    roads.accept(ahead);
  }

  @Override
  public void accept(Sample sample) {
    if (Channels.derived().contains(sample.channel())) {
      return;
    }
    samples.accept(sample);
    pace.accept(sample);
    derived.accept(sample);
    stores.accept(sample);
    plateaus.accept(sample);
  }

  @Override
  public Forecast tick(long timeMicros) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    double step = lastTickMicros < 0 ? 1 : seconds - lastTickMicros / MICROS_PER_SECOND;
    lastTickMicros = timeMicros;
    advance(timeMicros, seconds, Math.min(step, LONGEST_STEP_SECONDS));
    plateaus.advance(
        seconds,
        isLoadKnown ? heldKilowatts() : OptionalDouble.empty(),
        samples.within(Channels.VEHICLE_SPEED, timeMicros, LONGEST_STEP_SECONDS));
    Forecast.Assumption held = new Forecast.Assumption.LoadHeld();
    Optional<Outlook> outlook = outlook(held);
    order().forEach(channel -> weigh(channel, seconds, outlook));
    Forecast.Assumption known = new Forecast.Assumption.RoadKnown();
    Forecast forecast = roads.isKnown() ? forecast(known, outlook(known)) : forecast(held, outlook);
    for (ChannelForecast channel : forecast.channels()) {
      if (channel instanceof ChannelForecast.Ready ready) {
        StoreSet.of(ready.channel()).ifPresent(store -> calibrate(store, seconds, ready));
      }
    }
    return forecast;
  }

  @Override
  public Forecast under(Forecast.Assumption assumption) {
    if (lastTickMicros < 0) {
      throw new IllegalStateException(
          "A forecast under an assumption starts from a tick; call tick first");
    }
    return forecast(assumption, outlook(assumption));
  }

  /** Holds the physical model and the channel's own course against each other. */
  private void weigh(Channel channel, double seconds, Optional<Outlook> outlook) {
    Optional<Store> store = StoreSet.of(channel).filter(stores::isHeard);
    if (store.isEmpty() || pace.staleFor(channel, lastTickMicros).isPresent()) {
      return;
    }
    outlook.ifPresentOrElse(
        known ->
            plateaus.weigh(
                store.get(),
                seconds,
                courses(store.get(), known),
                stores.hasInputs(store.get()) && isPowerMeasured()),
        () -> plateaus.follow(store.get(), seconds));
  }

  private Courses courses(Store store, Outlook outlook) {
    return new Courses(
        stores.celsius(store).orElseThrow(), outlook.draws(store), outlook.settled(store));
  }

  /** Engine load is a share of a torque that the engine alone knows. */
  private boolean isPowerMeasured() {
    return EnginePower.tell(samples, lastTickMicros)
        .filter(power -> power.basis() != EnginePower.Basis.ENGINE_LOAD)
        .isPresent();
  }

  private OptionalDouble heldKilowatts() {
    return heldLoad
        .load()
        .map(load -> OptionalDouble.of(load.kilowatts()))
        .orElse(OptionalDouble.empty());
  }

  private void advance(long timeMicros, double seconds, double step) {
    derived.tick(timeMicros);
    grade = derived.loadGrade(timeMicros);
    Optional<Load> sensed = sensing.sense(samples, timeMicros, step);
    isLoadKnown = sensed.isPresent();
    sensed.ifPresent(
        load -> {
          heldLoad.accept(seconds, load);
          learning.accept(load, step);
          roads.learn(samples, timeMicros, load, derived.roadLoad(timeMicros), step);
        });
    present = heldLoad.load().map(held -> assumed(timeMicros).steady(held));
    present.ifPresent(
        held -> {
          stores.advance(seconds, heldLoad.load().orElse(held));
          if (sensed.isPresent()) {
            loadSpread.accept(seconds, held.kilowatts());
          }
        });
  }

  private void calibrate(Store store, double seconds, ChannelForecast.Ready ready) {
    BandCalibration calibration = calibrations.get(store);
    if (calibration != null) {
      calibration.check(seconds, ready.nowCelsius());
      calibration.promise(seconds, ready.fan());
    }
  }

  private Optional<Outlook> outlook(Forecast.Assumption assumption) {
    return isLoadKnown && learning.isEnough()
        ? present.map(held -> outlook(held, assumption))
        : Optional.empty();
  }

  private Forecast forecast(Forecast.Assumption assumption, Optional<Outlook> outlook) {
    List<ChannelForecast> channels = new ArrayList<>();
    for (Channel channel : order()) {
      StoreSet.of(channel)
          .filter(stores::isHeard)
          .ifPresent(store -> channels.add(forecast(store, outlook, assumption)));
    }
    return new Forecast(lastTickMicros, assumption, channels);
  }

  private LoadAssumption assumed(long timeMicros) {
    return new LoadAssumption(maps, derived.roadLoad(timeMicros), grade);
  }

  private Outlook outlook(Load held, Forecast.Assumption assumption) {
    Load ahead = assumed(lastTickMicros).load(held, assumption);
    boolean wanders = !(assumption instanceof Forecast.Assumption.StoppedAtIdle);
    double[] middles = ensemble.stepMiddles();
    double most = engineMostKilowatts(ahead.engineRpm());
    Ensemble.LoadAhead loadAhead =
        isAlongRoad(assumption)
            ? roads.loads(held, ensemble, derived.roadLoad(lastTickMicros), assumption)
            : (draw, point) ->
                wanders ? moved(ahead, middles[point], most, ensemble.loadNormal(draw)) : ahead;
    double seconds = lastTickMicros / MICROS_PER_SECOND;
    return ensemble.outlook(stores.estimates(), seconds, stretch(), ahead, loadAhead);
  }

  private boolean isAlongRoad(Forecast.Assumption assumption) {
    return switch (assumption) {
      case Forecast.Assumption.RoadKnown _ -> true;
      case Forecast.Assumption.SpeedEased _ -> roads.isKnown();
      case Forecast.Assumption.LoadHeld _, Forecast.Assumption.StoppedAtIdle _ -> false;
    };
  }

  private double[] stretch() {
    double[] stretch = new double[Store.COUNT];
    calibrations.forEach((store, each) -> stretch[store.index()] = each.factor());
    return stretch;
  }

  /**
   * The most that this engine gives near a speed; 0 if nothing tells, then what was seen counts.
   */
  private double engineMostKilowatts(double engineRpm) {
    double newtonMetres = SHARE_OF_REFERENCE * samples.ever(Channels.REFERENCE_TORQUE).orElse(0);
    return newtonMetres * engineRpm / NEWTON_METRE_RPM_PER_KILOWATT;
  }

  private Load moved(Load ahead, double seconds, double mostKilowatts, double normal) {
    double kilowatts = loadSpread.kilowattsAfter(seconds, ahead.kilowatts(), mostKilowatts, normal);
    return maps.moved(
        ahead, kilowatts, roads.rpmFor(kilowatts, ahead.engineRpm()), ahead.metresPerSecond());
  }

  private ChannelForecast forecast(
      Store store, Optional<Outlook> outlook, Forecast.Assumption assumption) {
    Channel channel = store.channel();
    OptionalDouble stale = pace.staleFor(channel, lastTickMicros);
    if (stale.isPresent()) {
      return new ChannelForecast.NoData(channel, stale.getAsDouble());
    }
    double silent = sensing.secondsSincePower(samples, lastTickMicros);
    if (!isLoadKnown && heldLoad.load().isPresent() && silent < POWER_FORGOTTEN_SECONDS) {
      return new ChannelForecast.NoData(channel, silent);
    }
    return (isLoadKnown
            ? outlook.map(known -> physical(store, known, assumption))
            : alone(store, assumption))
        .<ChannelForecast>map(courses -> ready(store, courses))
        .orElseGet(() -> new ChannelForecast.Learning(channel));
  }

  /** How far the bands of a channel that stands alone have to be stretched. */
  private double factor(Store store) {
    return calibrations.getOrDefault(store, new BandCalibration()).factor();
  }

  private Courses physical(Store store, Outlook outlook, Forecast.Assumption assumption) {
    Courses physical = courses(store, outlook);
    return switch (assumption) {
      case Forecast.Assumption.LoadHeld _, Forecast.Assumption.SpeedEased _ ->
          isAlongRoad(assumption) ? physical : plateaus.corrected(store, physical);
      case Forecast.Assumption.RoadKnown _ -> physical;
      // What heats a channel unseen goes away with the load.
      case Forecast.Assumption.StoppedAtIdle _ -> physical;
    };
  }

  /** Without any word of load only the channel's own course can go on, and only as it is. */
  private Optional<Courses> alone(Store store, Forecast.Assumption assumption) {
    return assumption instanceof Forecast.Assumption.LoadHeld
        ? plateaus.alone(
            store, lastTickMicros / MICROS_PER_SECOND, Math.min(factor(store), WIDEST_ALONE))
        : Optional.empty();
  }

  private ChannelForecast.Ready ready(Store store, Courses courses) {
    double[] secondsAhead = ensemble.secondsAhead();
    Fan fan = Band.fan(secondsAhead, courses.nowCelsius(), courses.draws());
    Optional<Limit> limit = vehicle.limit(store.channel());
    return new ChannelForecast.Ready(
        store.channel(),
        courses.nowCelsius(),
        fan,
        courses.settledCelsius(),
        limit.map(each -> LimitCrossing.forecast(secondsAhead, courses.draws(), each.celsius())));
  }

  /** The channels with limits in the vehicle's order, then the other thermal ones. */
  private Set<Channel> order() {
    Set<Channel> order = new LinkedHashSet<>();
    vehicle.limits().values().forEach(limit -> order.add(limit.channel()));
    order.addAll(Channels.thermal());
    order.retainAll(Channels.thermal());
    return order;
  }
}
