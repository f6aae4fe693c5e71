package steadypull.demo.season;

import java.util.Iterator;
import java.util.Optional;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.road.Road;
import steadypull.demo.road.Weather;

/** Runs the stages of a dynamometer. */
final class RollerGuide implements Guide {
  private static final double WORKSHOP_ALTITUDE = 60; // m

  private final Surroundings around;
  private final Iterator<Outing.Stage> stages;
  private Outing.Stage stage;
  private double left;
  private boolean isOver;
  private String mark = "";

  RollerGuide(Outing.OnRollers outing) {
    around = new Surroundings(0, outing.celsius(), Weather.kilopascals(WORKSHOP_ALTITUDE), 0);
    stages = outing.stages().iterator();
    stage = stages.next();
    left = stage.seconds();
    mark = stage.mark();
  }

  @Override
  public void look(double metres, double metresPerSecond, double seconds) {
    left -= seconds;
    if (left > 0) {
      return;
    }
    if (stages.hasNext()) {
      stage = stages.next();
      left = stage.seconds();
      mark = stage.mark();
    } else {
      isOver = true;
    }
  }

  /** Indoors no wind blows but the fan's, and the duty knows that one. */
  @Override
  public Surroundings around(double gust) {
    return around;
  }

  @Override
  public Duty duty() {
    return stage.duty();
  }

  @Override
  public boolean isOver() {
    return isOver;
  }

  @Override
  public Optional<Road.Place> place() {
    return Optional.empty();
  }

  @Override
  public Optional<String> takeMark() {
    Optional<String> taken = Optional.of(mark).filter(text -> !text.isEmpty());
    mark = "";
    return taken;
  }
}
