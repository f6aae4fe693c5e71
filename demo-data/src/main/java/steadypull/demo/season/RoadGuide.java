package steadypull.demo.season;

import java.util.Iterator;
import java.util.Optional;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.road.Road;
import steadypull.demo.road.Weather;

/** Drives leg after leg. */
final class RoadGuide implements Guide {
  private final Weather weather;
  private final Iterator<Leg> legs;
  private final double rollingResistance;
  private Leg.Stretch stretch;
  private SpeedPlan plan;
  private double roadMetres;
  private double fromRoadMetres;
  private double fromMetres;
  private double standsFor;
  private boolean isStanding = true;
  private boolean isOver;
  private String mark = "";
  private double driven;

  RoadGuide(Outing.OnTheRoad outing, double rollingResistance) {
    this.rollingResistance = rollingResistance;
    weather = outing.weather();
    legs = outing.legs().iterator();
    stretch =
        outing.legs().stream()
            .filter(Leg.Stretch.class::isInstance)
            .map(Leg.Stretch.class::cast)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("A drive on the road has a stretch"));
    roadMetres = stretch.from();
    plan = new SpeedPlan(stretch, roadMetres);
    next(0);
  }

  private void next(double metres) {
    if (!legs.hasNext()) {
      isOver = true;
      return;
    }
    switch (legs.next()) {
      case Leg.Stand stand -> {
        isStanding = true;
        standsFor = stand.seconds();
        mark = stand.mark();
      }
      case Leg.Stretch along -> {
        isStanding = false;
        roadMetres = along.road().equals(stretch.road()) ? roadMetres : along.from();
        fromRoadMetres = roadMetres;
        fromMetres = metres;
        driven = 0;
        stretch = along;
        plan = new SpeedPlan(along, roadMetres);
      }
    }
  }

  @Override
  public void look(double metres, double metresPerSecond, double seconds) {
    if (isStanding) {
      standsFor -= seconds;
      if (standsFor <= 0) {
        next(metres);
      }
      return;
    }
    driven = metres - fromMetres;
    roadMetres = Math.max(0, fromRoadMetres + (stretch.leadsHome() ? -driven : driven));
    if (metresPerSecond == 0 && plan.isDriven(driven)) {
      next(metres);
    }
  }

  @Override
  public Surroundings around(double gust) {
    Road road = stretch.road().road();
    Road.Place place = road.at(roadMetres);
    double wind = weather.headwindMetresPerSecond();
    double ahead = stretch.leadsHome() ? -wind : wind;
    return new Surroundings(
        gradeShare(place),
        weather.celsius(place.altitude() - road.startAltitude()),
        Weather.kilopascals(place.altitude()),
        Math.clamp(ahead + gust * weather.gustMetresPerSecond(), -40.0, 40.0));
  }

  /** Brakes hold a vehicle that stands, so that the engine idles and pulls against nothing. */
  private double gradeShare(Road.Place place) {
    if (isStanding) {
      return -rollingResistance;
    }
    return (stretch.leadsHome() ? -1 : 1) * place.gradePercent() / 100;
  }

  @Override
  public Duty duty() {
    return new Duty.HoldSpeed(isStanding ? 0 : plan.at(driven));
  }

  @Override
  public boolean isOver() {
    return isOver;
  }

  @Override
  public Optional<Road.Place> place() {
    return stretch.road().isInTunnel(roadMetres)
        ? Optional.empty()
        : Optional.of(stretch.road().at(roadMetres));
  }

  @Override
  public Optional<String> takeMark() {
    Optional<String> taken = Optional.of(mark).filter(text -> !text.isEmpty());
    mark = "";
    return taken;
  }
}
