package steadypull.thermal;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.RoadAhead;
import steadypull.road.RoadLoad;

/**
 * Learns how this rig is driven on roads that are known, and plans the load ahead of it on one.
 * Pipeline thread only.
 */
final class RoadOutlook {
  /** Shorter knowledge than this says less than the present load. */
  private static final double LEAST_METRES = 400;

  /** An engine speed that is only usual makes a gear of every road speed. */
  private static final double FRESH_SECONDS = 3;

  private final LoadMaps maps;
  private final GearsSeen gears = new GearsSeen();
  private final FullPull pull;
  private final RoadForce force = new RoadForce();
  private final CruiseSpeed cruise = new CruiseSpeed();
  private Optional<RoadAhead.Known> road = Optional.empty();

  RoadOutlook(LoadMaps maps, FullPull pull) {
    this.maps = maps;
    this.pull = pull;
  }

  /** Takes what is known of the road from here on. */
  void accept(RoadAhead ahead) {
    road =
        switch (ahead) {
          case RoadAhead.Unknown(), RoadAhead.Ungraded() -> Optional.empty();
          case RoadAhead.Known known -> Optional.of(known);
        };
  }

  /** The gears that this drive has shown. */
  GearsSeen gears() {
    return gears;
  }

  /** Whether enough of the road is known to plan along it. */
  boolean isKnown() {
    return road.filter(known -> known.certain().lengthMetres() >= LEAST_METRES).isPresent();
  }

  /** Takes a moment of the drive that stands for some seconds. */
  void learn(DriveMoment moment, double span) {
    moment.load().ifPresentOrElse(load -> learn(moment, load, span), force::interrupt);
  }

  private void learn(DriveMoment moment, Load load, double span) {
    if (moment.fresh(Channels.ENGINE_SPEED, FRESH_SECONDS).isPresent()) {
      gears.accept(load.engineRpm(), load.metresPerSecond(), span);
    }
    cruise.accept(load.metresPerSecond(), pull.isGivingAll(), span);
    OptionalDouble grade = gradeHere();
    if (grade.isEmpty() || moment.figures().isEmpty()) {
      force.interrupt();
    } else {
      force.accept(
          moment.figures().get(),
          span,
          load.kilowatts(),
          load.metresPerSecond(),
          grade.getAsDouble());
    }
  }

  private OptionalDouble gradeHere() {
    return road.filter(known -> known.certain().size() > 0)
        .map(known -> OptionalDouble.of(known.certain().grade(0)))
        .orElse(OptionalDouble.empty());
  }

  /** The load of every draw along the road, planned as it is asked for. */
  Ensemble.LoadAhead loads(
      Load now, Ensemble ensemble, RoadLoad figures, Forecast.Assumption assumption) {
    RoadAhead.Known known = road.orElseThrow();
    RoadPlan plan = new RoadPlan(maps, figures, gears, pull.guess());
    RoadChoice choice = new RoadChoice(known);
    PlannedDrive[] drives = new PlannedDrive[ensemble.count()];
    double wish =
        assumption instanceof Forecast.Assumption.SpeedEased(double kilometresPerHour)
            ? Math.min(kilometresPerHour / 3.6, cruise.metresPerSecond())
            : cruise.metresPerSecond();
    for (int draw = 0; draw < drives.length; draw++) {
      RoadForce.Draw drawn =
          force.draw(
              ensemble.roadNormal(draw, 0),
              ensemble.roadNormal(draw, 1),
              ensemble.roadNormal(draw, 2));
      drives[draw] =
          plan.drive(
              now,
              wish,
              new RoadPlan.Draw(
                  choice.way(ensemble.roadNormal(draw, 7)),
                  drawn,
                  ensemble.roadNormal(draw, 3),
                  ensemble.roadNormal(draw, 4),
                  ensemble.roadNormal(draw, 5),
                  ensemble.roadNormal(draw, 6)));
    }
    double[] spans = ensemble.stepSeconds();
    double[] kept = Arrays.stream(ensemble.stepMiddles()).map(RoadForce::kept).toArray();
    return (draw, point) -> drives[draw].next(spans[point], kept[point]);
  }
}
