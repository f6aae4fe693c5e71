package steadypull.thermal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Where a channel's own last minutes lead: a rise to a plateau, fitted to averages with what is
 * usual as an earlier belief. Where no bend can be seen yet, the belief leaves the plateau wide
 * open and the courses say so. Knows nothing of load; for channels whose physics lack their inputs.
 * Pipeline thread only.
 */
final class Plateau {
  /** As often as an average is complete. */
  private static final double FIT_EVERY_SECONDS = 5;

  /** Fewer seconds show a slope no better than a guess. */
  private static final double LEAST_SPAN_SECONDS = 20;

  /** No store is farther from what is usual than so many deviations (estimated). */
  private static final double FARTHEST_SPREADS = 2;

  /** Steeper is no slope of a store of usual time constant 100 s: 1 K/s (estimated). */
  private static final double SLOPE_SPREAD_KELVIN = 100;

  /** A fit that misses its points by more than this many deviations spans two loads. */
  private static final double TORN = 1.4;

  /** Share of the span that goes when a fit is torn. */
  private static final double TORN_OFF = 0.25;

  /** A rise that has gone on for a while goes on for about so many times as long (estimated). */
  private static final double LASTS_AS_LONG = 1;

  /** A load that has changed goes on for about this long (estimated from rolling country). */
  private static final double WANDER_SECONDS = 180;

  /** A thousandth of a degree; the readings come in whole ones. */
  private static final double CLOSE_ENOUGH = 1e-6;

  /** Between a walk at random, 0.5, and a rise that goes on, 1 (estimated). */
  private static final double WANDER_EXPONENT = 0.8;

  private static final double MINUTE = 60;
  private static final int DRAWS = 32;
  private static final DrawSet NUMBERS = new DrawSet(DRAWS, 4);
  private static final RiseCurve CURVE = new RiseCurve();

  private final RiseNature nature;
  private final RecentAverages averages = new RecentAverages();
  private final double[] usual;
  private Optional<CurveFit.Found> found = Optional.empty();
  private double fittedSeconds;
  private double nowSeconds;
  private double wanderKelvin;

  Plateau(RiseNature nature) {
    this.nature = nature;
    wanderKelvin = nature.wanderKelvin();
    double logRate = -Math.log(nature.usualSeconds());
    usual = new double[] {0, 0, logRate};
  }

  /** Takes a reading; times do not run backwards. */
  void accept(double seconds, double celsius) {
    averages.accept(seconds, celsius);
  }

  /** The load has changed: what lies before says little about what comes. */
  void restart(double seconds) {
    averages.forgetBefore(seconds);
    found = Optional.empty();
  }

  /** How far a forecast for a minute later has lately been wrong, K. */
  void wanders(double kelvin) {
    wanderKelvin = kelvin;
  }

  /** Moves on to a moment; fits anew to what was heard until now if it is time. */
  void fit(double seconds) {
    nowSeconds = seconds;
    if (found.isPresent() && seconds < fittedSeconds + FIT_EVERY_SECONDS) {
      return;
    }
    fittedSeconds = seconds;
    if (averages.spanSeconds() < LEAST_SPAN_SECONDS) {
      found = Optional.empty();
      return;
    }
    List<CurveFit.Point> points = averages.points(seconds, nature.readingKelvin());
    found =
        found
            .flatMap(before -> fitted(points, before.parameters()))
            .or(() -> fitted(points, usual));
    if (found.isEmpty() || found.get().scatter() > TORN) {
      tearOff(seconds);
    }
  }

  private Optional<CurveFit.Found> fitted(List<CurveFit.Point> points, double[] from) {
    double[] start = from.clone();
    start[RiseCurve.LEVEL] = points.getLast().y();
    return CurveFit.fit(CURVE, points, beliefs(), start, CLOSE_ENOUGH);
  }

  private List<CurveFit.Belief> beliefs() {
    double lasts = Math.min(nature.usualSeconds(), LASTS_AS_LONG * averages.spanSeconds());
    return List.of(
        new CurveFit.Belief(RiseCurve.SLOPE, 0, SLOPE_SPREAD_KELVIN / nature.usualSeconds()),
        new CurveFit.Belief(RiseCurve.LOG_RATE, -Math.log(lasts), nature.logSpread()));
  }

  /** What the oldest averages tell belongs to another load; the next fit goes without them. */
  private void tearOff(double seconds) {
    double span = averages.spanSeconds();
    if (span * (1 - TORN_OFF) > LEAST_SPAN_SECONDS) {
      averages.forgetBefore(seconds - span * (1 - TORN_OFF));
    }
  }

  /** Whether there is something to go by. */
  boolean isFitted() {
    return found.isPresent();
  }

  /** The smoothed temperature now, degC. */
  double celsius() {
    return CURVE.value(nowSeconds - fittedSeconds, parameters());
  }

  /** Where it most probably settles, degC. */
  double settled() {
    return middle(Double.POSITIVE_INFINITY, celsius());
  }

  /** The most probable temperature after some seconds, if it is the one given now, degC. */
  double middle(double secondsAhead, double nowCelsius) {
    double[] parameters = parameters();
    double logRate = bounded(parameters[RiseCurve.LOG_RATE]);
    double slope = parameters[RiseCurve.SLOPE] * kept(logRate);
    double reach =
        Double.isInfinite(secondsAhead)
            ? Math.exp(-logRate)
            : RiseCurve.reach(secondsAhead, logRate);
    return held(nowCelsius + slope * reach, nowCelsius, 0);
  }

  /** Share of a slope that is left since the fit. */
  private double kept(double logRate) {
    return Math.exp(-Math.exp(logRate) * (nowSeconds - fittedSeconds));
  }

  private double[] parameters() {
    return found.orElseThrow().parameters();
  }

  /**
   * Courses that begin at the temperature given, by draw and then by moment; their spread is the
   * covariance of the fit and the wander of a load that nobody tells.
   *
   * @param stretch how many times as wide; 1 leaves them as they are
   */
  double[][] courses(double[] secondsAhead, double nowCelsius, double stretch) {
    double[][] courses = new double[DRAWS][];
    double[] growth = growth(secondsAhead);
    for (int draw = 0; draw < DRAWS; draw++) {
      courses[draw] = course(draw, secondsAhead, growth, nowCelsius, stretch);
    }
    return courses;
  }

  private double[] course(
      int draw, double[] secondsAhead, double[] growth, double nowCelsius, double stretch) {
    double[] drawn = drawn(draw, stretch);
    double slope = drawn[0] * kept(drawn[1]);
    double wander = stretch * wanderKelvin * NUMBERS.at(draw, 2);
    double[] course = new double[secondsAhead.length];
    for (int point = 0; point < course.length; point++) {
      double risen =
          slope * RiseCurve.reach(secondsAhead[point], drawn[1]) + wander * growth[point];
      course[point] = held(nowCelsius + risen, nowCelsius, NUMBERS.at(draw, 3));
    }
    return course;
  }

  /** Slope and logarithm of the rate in one draw, by the Cholesky factor of their covariance. */
  private double[] drawn(int draw, double stretch) {
    CurveFit.Found fit = found.orElseThrow();
    double torn = stretch * Math.clamp(fit.scatter(), 1, TORN);
    double[][] covariance = fit.covariance();
    double slopeDeviation = Math.sqrt(covariance[RiseCurve.SLOPE][RiseCurve.SLOPE]);
    double shared = covariance[RiseCurve.SLOPE][RiseCurve.LOG_RATE] / slopeDeviation;
    double own =
        Math.sqrt(
            Math.max(0, covariance[RiseCurve.LOG_RATE][RiseCurve.LOG_RATE] - shared * shared));
    double first = torn * NUMBERS.at(draw, 0);
    double second = torn * NUMBERS.at(draw, 1);
    return new double[] {
      fit.parameters()[RiseCurve.SLOPE] + slopeDeviation * first,
      bounded(fit.parameters()[RiseCurve.LOG_RATE] + shared * first + own * second)
    };
  }

  /** A cold engine that warms up ends where its thermostat holds it. */
  private double held(double celsius, double nowCelsius, double normal) {
    if (nature.workingCelsius().isEmpty()) {
      return celsius;
    }
    double working = nature.workingCelsius().getAsDouble() + nature.workingSpread() * normal;
    return nowCelsius < working ? Math.min(celsius, working) : celsius;
  }

  private double bounded(double logRate) {
    double farthest = FARTHEST_SPREADS * nature.logSpread();
    double middle = usual[RiseCurve.LOG_RATE];
    return Math.clamp(logRate, middle - farthest, middle + farthest);
  }

  /** How many times a minute's wander is there by then: it leads to a plateau of its own. */
  private static double[] growth(double[] secondsAhead) {
    return Arrays.stream(secondsAhead)
        .map(each -> Math.pow(wandered(each) / wandered(MINUTE), WANDER_EXPONENT))
        .toArray();
  }

  private static double wandered(double seconds) {
    return -Math.expm1(-seconds / WANDER_SECONDS);
  }
}
