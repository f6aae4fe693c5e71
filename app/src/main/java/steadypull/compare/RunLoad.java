package steadypull.compare;

import java.util.Arrays;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.StandardAtmosphere;

/** A run as its store felt it, with what its sensor showed. One thread. */
final class RunLoad implements LoadCourse {
  /** So long before the onset the fit begins, so that the start is a state and no reading. */
  private static final int BEFORE_SECONDS = 40;

  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double USUAL_OUTSIDE_CELSIUS = 20;
  private static final double USUAL_KILOMETRES_PER_HOUR = 65;

  private final Run run;
  private final int first;
  private final int end;
  private final double[] heat;
  private final double[] outside;
  private final double[] speed;
  private final double[] logSpeed;
  private final double[] logDensity;
  private final double[] shown;

  /** Of a run whose channel was heard. */
  RunLoad(Run run, Channel channel, HeatSource source) {
    this.run = run;
    RunSeries series = run.series();
    first = Math.max(series.firstSecond(), -BEFORE_SECONDS);
    end = Math.min(series.endSecond(), run.loadSeconds());
    heat = source.watts(run, first, end);
    outside = outside(run, first, end);
    double[] wheels =
        Columns.held(series, Channels.VEHICLE_SPEED, first, end, USUAL_KILOMETRES_PER_HOUR);
    speed = Columns.each(wheels.length, i -> Math.max(0, wheels[i]) / KILOMETRES_PER_HOUR);
    double[] pressure =
        Columns.held(
            series,
            Channels.BAROMETRIC_PRESSURE,
            first,
            end,
            run.start().pressureKilopascals().orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS));
    logDensity =
        Columns.each(pressure.length, i -> LoadCourse.logOfDensity(pressure[i], outside[i]));
    logSpeed = Columns.each(speed.length, i -> LoadCourse.logOfSpeed(speed[i]));
    shown = series.span(channel, first, end);
  }

  /** The sensor's course, moved to what is known best of its height at the onset. */
  private static double[] outside(Run run, int from, int to) {
    double usual = run.start().outsideCelsius().orElse(USUAL_OUTSIDE_CELSIUS);
    double[] told = Columns.held(run.series(), Channels.AMBIENT_AIR_TEMP, from, to, usual);
    double moved = usual - told[-from];
    boolean isMoved = run.start().outsideCelsius().isPresent();
    return isMoved ? Columns.each(told.length, i -> told[i] + moved) : told;
  }

  Run run() {
    return run;
  }

  /** Readings, NaN where there was none. Not to be written to. */
  double[] shown() {
    return shown;
  }

  /** The first reading, degC. */
  double firstShown() {
    return Arrays.stream(shown).filter(each -> !Double.isNaN(each)).findFirst().orElse(0);
  }

  /** Mean of something over the seconds in which the load was held. */
  double held(double[] values) {
    int from = Math.min(values.length, -first + Math.min(20, run.heldSeconds() / 2));
    int to = Math.clamp(-first + run.heldSeconds(), from, values.length);
    return Columns.mean(Arrays.copyOfRange(values, from, Math.max(to, from)));
  }

  double heldSpeed() {
    return held(speed);
  }

  double heldOutside() {
    return held(outside);
  }

  double heldHeat() {
    return held(heat);
  }

  double heldKilowatts() {
    return held(Power.kilowatts(run, first, end));
  }

  /** A channel held over gaps, from the first second to the end. */
  double[] column(Channel channel, double usual) {
    return Columns.held(run.series(), channel, first, end, usual);
  }

  @Override
  public int firstSecond() {
    return first;
  }

  @Override
  public int endSecond() {
    return end;
  }

  @Override
  public double heatWatts(int second, double celsius) {
    return heat[second - first];
  }

  @Override
  public double outsideCelsius(int second) {
    return outside[second - first];
  }

  @Override
  public double logSpeed(int second) {
    return logSpeed[second - first];
  }

  @Override
  public double logDensity(int second) {
    return logDensity[second - first];
  }

  @Override
  public boolean isOnRollers() {
    return run.ground() == Run.Ground.ROLLERS;
  }
}
