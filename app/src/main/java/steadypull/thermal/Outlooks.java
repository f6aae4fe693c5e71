package steadypull.thermal;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import steadypull.channel.Channels;
import steadypull.road.RoadAhead;

/**
 * Runs the stores ahead under whatever is assumed of the load to come: the present one, one that a
 * driver may choose, or the one that a known road asks for. Keeps what a drive teaches about its
 * load and about how wide the bands have to be, apart for either way of looking ahead. Pipeline
 * thread only.
 */
final class Outlooks {
  /** Without a road speed nobody knows how soon the road ahead comes. */
  private static final double SPEED_FRESH_SECONDS = 10;

  /** A channel that stands alone is stretched by what it shows so far ahead. */
  private static final double ALONE_SECONDS = 60;

  /**
   * An engine at its most hides what a steeper road would ask for; at a lower speed it gives so
   * much more force. As far as this: a tenth is 0.6 to 0.8 % of grade for a loaded rig (computed
   * for 7 t at 90 km/h).
   */
  private static final double ROAD_ASKS = 1.1;

  private final LoadMaps maps;
  private final LoadSpread spread = new LoadSpread();
  private final FullPull pull = new FullPull();
  private final RoadOutlook roads;
  private final GearLower gearLower;
  private final AirConditioning airConditioning;
  private final Ensemble ensemble = new Ensemble();
  private final Map<Store, BandCalibration> held = calibrations(BandStart::held);
  private final Map<Store, BandCalibration> alongRoad = calibrations(BandStart::alongRoad);

  /**
   * Of a drive.
   *
   * @param maps fuel and air that go with a power
   * @param ratedRpm of the engine, if it is known
   */
  Outlooks(LoadMaps maps, OptionalDouble ratedRpm) {
    this.maps = maps;
    this.roads = new RoadOutlook(maps, pull);
    this.gearLower = new GearLower(maps, roads.gears(), ratedRpm);
    this.airConditioning = new AirConditioning(maps);
  }

  private static Map<Store, BandCalibration> calibrations(Function<Store, BandStart> start) {
    Map<Store, BandCalibration> calibrations = new EnumMap<>(Store.class);
    for (Store store : Store.values()) {
      calibrations.put(store, new BandCalibration(start.apply(store)));
    }
    return calibrations;
  }

  /** Takes what is known of the road from here on. */
  void accept(RoadAhead ahead) {
    roads.accept(ahead);
  }

  /** Takes a moment of the drive that stands for some seconds. */
  void learn(DriveMoment moment, double span) {
    pull.accept(moment, span);
    roads.learn(moment, span);
  }

  /** Takes the held power of one moment, kW. */
  void hold(double seconds, double kilowatts) {
    spread.accept(seconds, kilowatts);
  }

  /** Whether the forecast of this moment goes along a road that is known. */
  boolean isRoadKnown(DriveMoment moment) {
    return roads.isKnown()
        && moment.figures().isPresent()
        && moment.fresh(Channels.VEHICLE_SPEED, SPEED_FRESH_SECONDS).isPresent();
  }

  /** Whether an assumption is followed along the known road. */
  boolean isAlongRoad(DriveMoment moment, Forecast.Assumption assumption) {
    return switch (assumption) {
      case Forecast.Assumption.RoadKnown _,
          Forecast.Assumption.SpeedEased _,
          Forecast.Assumption.OneGearLower _,
          Forecast.Assumption.AirConditioningOff _ ->
          isRoadKnown(moment);
      case Forecast.Assumption.LoadHeld _, Forecast.Assumption.StoppedAtIdle _ -> false;
    };
  }

  /**
   * The most probable courses under the present load, as far as models are judged by them: degC by
   * store, draw and point. A drive along a known road asks for no more of them.
   */
  double[][][] heldToJudge(DriveMoment moment, Load steady, Beginnings begin) {
    Forecast.Assumption held = new Forecast.Assumption.LoadHeld();
    Load ahead = moment.assumption(maps).load(steady, held);
    return ensemble.middle(begin, ahead, HorizonGrid.until(ModelTrust.FARTHEST));
  }

  /** Where all looks ahead from a moment begin. */
  Beginnings begin(Collection<ChannelEstimate> estimates, double seconds) {
    return ensemble.begin(estimates, seconds);
  }

  /** All stores from now on under an assumption; empty if it cannot come true. */
  Optional<Outlook> under(
      Forecast.Assumption assumption, DriveMoment moment, Load steady, Beginnings begin) {
    LoadAssumption assumed = moment.assumption(maps);
    Load ahead = assumed.load(steady, assumption);
    Ensemble.LoadAhead loads =
        isAlongRoad(moment, assumption)
            ? roads.loads(steady, ensemble, moment.figures().orElseThrow(), assumption)
            : turning(steady, around(steady, ahead, assumption));
    return changed(assumption, turning(steady, ahead))
        .map(settles -> ensemble.outlook(begin, settles, changed(assumption, loads)));
  }

  /** The load in the middle of the draws, changed as assumed; empty if it cannot be. */
  private Optional<Load> changed(Forecast.Assumption assumption, Load load) {
    return switch (assumption) {
      case Forecast.Assumption.OneGearLower _ -> gearLower.of(load);
      case Forecast.Assumption.AirConditioningOff _ -> Optional.of(airConditioning.off(load, 0));
      case Forecast.Assumption.LoadHeld _,
          Forecast.Assumption.RoadKnown _,
          Forecast.Assumption.SpeedEased _,
          Forecast.Assumption.StoppedAtIdle _ ->
          Optional.of(load);
    };
  }

  /** The same for the loads of every draw; where there is no lower gear the gear is kept. */
  private Ensemble.LoadAhead changed(Forecast.Assumption assumption, Ensemble.LoadAhead loads) {
    return switch (assumption) {
      case Forecast.Assumption.OneGearLower _ ->
          (draw, point) -> {
            Load load = loads.at(draw, point);
            return gearLower.of(load).orElse(load);
          };
      case Forecast.Assumption.AirConditioningOff _ ->
          (draw, point) ->
              airConditioning.off(loads.at(draw, point), ensemble.airConditioningNormal(draw));
      case Forecast.Assumption.LoadHeld _,
          Forecast.Assumption.RoadKnown _,
          Forecast.Assumption.SpeedEased _,
          Forecast.Assumption.StoppedAtIdle _ ->
          loads;
    };
  }

  /**
   * A load under which the engine turns slower than it does now turns its fan and pump slower too;
   * under a faster one no more is promised of them than was learnt.
   */
  static Load turning(Load present, Load load) {
    boolean isSlower = load.engineRpm() > 0 && load.engineRpm() < present.engineRpm();
    return isSlower ? load.with(CoreChange.slower(load.engineRpm() / present.engineRpm())) : load;
  }

  private static Ensemble.LoadAhead turning(Load present, Ensemble.LoadAhead loads) {
    return (draw, point) -> turning(present, loads.at(draw, point));
  }

  /**
   * A load that goes on, but that of a rolling road, not that of a plan. What the road asks for is
   * spread at the speed at which it was learnt; at another speed it is the same force more or less.
   * A spread around the lower power itself would have a rig at 60 km/h climb with all its engine
   * gives, on a grade that is nowhere near.
   *
   * @param present the load at the present speed
   * @param ahead the same under the assumption
   */
  private Ensemble.LoadAhead around(Load present, Load ahead, Forecast.Assumption assumption) {
    if (assumption instanceof Forecast.Assumption.StoppedAtIdle) {
      return (_, _) -> ahead;
    }
    double[] middles = ensemble.stepMiddles();
    double slower = slower(present, ahead);
    double asked = pull.kilowatts(present.engineRpm()) * Math.clamp(1 / slower, 1.0, ROAD_ASKS);
    return (draw, point) ->
        moved(present, ahead, slower, middles[point], asked, ensemble.loadNormal(draw));
  }

  /** The speed against the present one; 1 while standing, when none is eased to. */
  private static double slower(Load present, Load ahead) {
    return present.metresPerSecond() > 0 ? ahead.metresPerSecond() / present.metresPerSecond() : 1;
  }

  private Load moved(
      Load present,
      Load ahead,
      double slower,
      double seconds,
      double mostKilowatts,
      double normal) {
    double asked = spread.kilowattsAfter(seconds, present.kilowatts(), mostKilowatts, normal);
    double kilowatts = Math.max(0, ahead.kilowatts() + (asked - present.kilowatts()) * slower);
    return maps.moved(
        ahead, kilowatts, pull.rpmFor(kilowatts, ahead.engineRpm()), ahead.metresPerSecond());
  }

  /** Seconds ahead of the points of every course. */
  double[] secondsAhead() {
    return ensemble.secondsAhead();
  }

  /** How far the bands of a channel that stands alone have to be stretched. */
  double factor(Store store) {
    return calibration(held, store).factor(ALONE_SECONDS);
  }

  /** Stretches courses, in place, as far as the bands of the like have shown to be wrong. */
  void stretch(Store store, boolean isAlongRoad, Courses courses) {
    calibration(isAlongRoad ? alongRoad : held, store).stretch(secondsAhead(), courses);
  }

  /** Holds the bands of this moment's forecast against what comes. */
  void calibrate(Store store, double seconds, boolean isAlongRoad, ChannelForecast.Ready ready) {
    calibration(held, store).check(seconds, ready.nowCelsius());
    calibration(alongRoad, store).check(seconds, ready.nowCelsius());
    calibration(isAlongRoad ? alongRoad : held, store).promise(seconds, ready.fan());
  }

  private static BandCalibration calibration(Map<Store, BandCalibration> all, Store store) {
    return Objects.requireNonNull(all.get(store));
  }
}
