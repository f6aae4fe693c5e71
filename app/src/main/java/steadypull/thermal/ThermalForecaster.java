package steadypull.thermal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
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

  /** A course that stands alone has its own learnt wander; so much more at most (estimated). */
  private static final double WIDEST_ALONE = 1.5;

  private final Vehicle vehicle;
  private final WatchedChannels watched;
  private final LatestSamples samples = new LatestSamples();
  private final ChannelPace pace = new ChannelPace();
  private final DerivedChannels derived;
  private final LoadMaps maps = new LoadMaps();
  private final LoadSensing sensing = new LoadSensing(maps);
  private final HeldLoad heldLoad = new HeldLoad();
  private final Learning learning = new Learning();
  private final StoreSet stores;
  private final Outlooks outlooks;
  private final OwnCourses courses;

  private Optional<DriveMoment> moment = Optional.empty();
  private Optional<Load> present = Optional.empty();

  /** What was asked for since the last tick: the advice and the screen ask for the same. */
  private final Map<Forecast.Assumption, Forecast> asked = new HashMap<>();

  private Optional<Beginnings> beginnings = Optional.empty();
  private boolean isLoadKnown;
  private long lastTickMicros = -1;

  /** A forecaster that knows of this vehicle its layout, limits, rig and what trips have taught. */
  public ThermalForecaster(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.watched = new WatchedChannels(vehicle);
    this.derived = new DerivedChannels(vehicle);
    this.stores = new StoreSet(vehicle.layout(), vehicle.learnt());
    this.outlooks = new Outlooks(maps, vehicle.driveline().ratedEngineSpeed());
    this.courses = new OwnCourses(stores);
  }

  @Override
  public void accept(RoadAhead ahead) {
    outlooks.accept(ahead);
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
    courses.accept(sample);
  }

  @Override
  public Forecast tick(long timeMicros) {
    double seconds = timeMicros / MICROS_PER_SECOND;
    double step = lastTickMicros < 0 ? 1 : seconds - lastTickMicros / MICROS_PER_SECOND;
    lastTickMicros = timeMicros;
    advance(timeMicros, seconds, Math.min(step, LONGEST_STEP_SECONDS));
    courses.advance(
        seconds,
        isLoadKnown ? heldKilowatts() : OptionalDouble.empty(),
        samples.within(Channels.VEHICLE_SPEED, timeMicros, LONGEST_STEP_SECONDS));
    boolean isAlongRoad = isAlongRoad(new Forecast.Assumption.RoadKnown());
    Forecast forecast = isAlongRoad ? alongRoad(seconds) : underHeldLoad(seconds);
    for (ChannelForecast channel : forecast.channels()) {
      if (channel instanceof ChannelForecast.Ready ready) {
        StoreSet.of(ready.channel())
            .ifPresent(store -> outlooks.calibrate(store, seconds, isAlongRoad, ready));
      }
    }
    return forecast;
  }

  private Forecast alongRoad(double seconds) {
    Optional<double[][][]> held =
        foreseen((now, load) -> Optional.of(outlooks.heldToJudge(now, load, begin(now))));
    judged().forEach(store -> courses.weigh(store, seconds, held));
    Forecast.Assumption known = new Forecast.Assumption.RoadKnown();
    return forecast(known, outlook(known));
  }

  private Forecast underHeldLoad(double seconds) {
    Forecast.Assumption held = new Forecast.Assumption.LoadHeld();
    Optional<Outlook> outlook = outlook(held);
    judged().forEach(store -> courses.weigh(store, seconds, outlook.map(Outlook::draws)));
    mend(outlook);
    return forecast(held, outlook);
  }

  @Override
  public Forecast under(Forecast.Assumption assumption) {
    if (lastTickMicros < 0) {
      throw new IllegalStateException(
          "A forecast under an assumption starts from a tick; call tick first");
    }
    return asked.computeIfAbsent(assumption, this::lookAhead);
  }

  private Forecast lookAhead(Forecast.Assumption assumption) {
    Optional<Outlook> outlook = outlook(assumption);
    if (assumption instanceof Forecast.Assumption.LoadHeld) {
      mend(outlook);
    }
    return forecast(assumption, outlook);
  }

  /** The channels of which model and own course are held against each other. */
  private List<Store> judged() {
    return watched.order().stream()
        .filter(channel -> pace.staleFor(channel, lastTickMicros).isEmpty())
        .flatMap(channel -> StoreSet.of(channel).stream())
        .filter(stores::isHeard)
        .toList();
  }

  private void mend(Optional<Outlook> held) {
    boolean isPowerMeasured = isPowerMeasured();
    held.ifPresent(
        outlook -> judged().forEach(store -> courses.mend(store, outlook, isPowerMeasured)));
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
    Optional<Load> sensed = sensing.sense(samples, timeMicros, step);
    DriveMoment now =
        new DriveMoment(
            samples,
            timeMicros,
            sensed,
            derived.roadLoad(timeMicros),
            derived.loadGrade(timeMicros),
            watched.isHot(samples, timeMicros));
    moment = Optional.of(now);
    beginnings = Optional.empty();
    asked.clear();
    isLoadKnown = sensed.isPresent();
    outlooks.learn(now, step);
    sensed.ifPresent(
        load -> {
          heldLoad.accept(seconds, load);
          learning.accept(load, step);
        });
    present = heldLoad.load().map(held -> now.assumption(maps).steady(held));
    present.ifPresent(
        held -> {
          stores.advance(seconds, heldLoad.load().orElse(held));
          if (sensed.isPresent()) {
            outlooks.hold(seconds, held.kilowatts());
          }
        });
  }

  /** Where every look ahead from this moment begins. */
  private Beginnings begin(DriveMoment now) {
    Beginnings begun =
        beginnings.orElseGet(() -> outlooks.begin(stores.estimates(), now.seconds()));
    beginnings = Optional.of(begun);
    return begun;
  }

  private Optional<Outlook> outlook(Forecast.Assumption assumption) {
    return foreseen((now, load) -> outlooks.under(assumption, now, load, begin(now)));
  }

  /** What is foreseen of this moment and its load; empty where too little is known of load. */
  private <T> Optional<T> foreseen(BiFunction<DriveMoment, Load, Optional<T>> foresight) {
    return isLoadKnown && learning.isEnough() && present.isPresent()
        ? moment.flatMap(now -> foresight.apply(now, present.get()))
        : Optional.empty();
  }

  private boolean isAlongRoad(Forecast.Assumption assumption) {
    return moment.filter(now -> outlooks.isAlongRoad(now, assumption)).isPresent();
  }

  private Forecast forecast(Forecast.Assumption assumption, Optional<Outlook> outlook) {
    List<ChannelForecast> channels = new ArrayList<>();
    for (Channel channel : watched.order()) {
      StoreSet.of(channel)
          .filter(stores::isHeard)
          .ifPresent(store -> channels.add(forecast(store, outlook, assumption)));
    }
    return new Forecast(lastTickMicros, assumption, channels);
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
            ? outlook.map(known -> stretched(store, physical(store, known, assumption), assumption))
            : alone(store, assumption))
        .<ChannelForecast>map(found -> ready(store, found))
        .orElseGet(() -> new ChannelForecast.Learning(channel));
  }

  private Courses physical(Store store, Outlook outlook, Forecast.Assumption assumption) {
    return switch (assumption) {
      case Forecast.Assumption.LoadHeld _ -> courses.corrected(store, outlook);
      case Forecast.Assumption.SpeedEased _,
          Forecast.Assumption.OneGearLower _,
          Forecast.Assumption.AirConditioningOff _ ->
          isAlongRoad(assumption)
              ? courses.physical(store, outlook)
              : courses.corrected(store, outlook);
      case Forecast.Assumption.RoadKnown _ -> courses.physical(store, outlook);
      // What heats a channel unseen goes away with the load.
      case Forecast.Assumption.StoppedAtIdle _ -> courses.physical(store, outlook);
    };
  }

  private Courses stretched(Store store, Courses found, Forecast.Assumption assumption) {
    outlooks.stretch(store, isAlongRoad(assumption), found);
    return found;
  }

  /** Without any word of load only the channel's own course can go on, and only as it is. */
  private Optional<Courses> alone(Store store, Forecast.Assumption assumption) {
    return assumption instanceof Forecast.Assumption.LoadHeld
        ? courses.alone(
            store,
            lastTickMicros / MICROS_PER_SECOND,
            Math.min(outlooks.factor(store), WIDEST_ALONE))
        : Optional.empty();
  }

  private ChannelForecast.Ready ready(Store store, Courses found) {
    double[] secondsAhead = outlooks.secondsAhead();
    Fan fan = Band.fan(secondsAhead, found);
    Optional<Limit> limit =
        vehicle.limit(store.channel(), OutsidePressure.kilopascals(samples, lastTickMicros));
    return new ChannelForecast.Ready(
        store.channel(),
        found.nowCelsius(),
        fan,
        found.settledCelsius(),
        limit.map(each -> LimitCrossing.forecast(secondsAhead, found.draws(), each.celsius())));
  }
}
