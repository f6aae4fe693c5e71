package steadypull.ui;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import steadypull.channel.Channel;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;
import steadypull.drive.Trace;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.LimitForecast;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;

/** Builds strips for tests: an even rise behind, a rise to a plateau ahead. */
final class Strips {
  private static final double[] NORMAL = {-1.645, -1.282, -0.674, 0, 0.674, 1.282, 1.645};

  private final Channel channel;
  private final double limit;
  private double from;
  private double now;
  private double to = Double.NaN;
  private double spread = 1.2;
  private double silentSeconds;
  private StripLevel level = StripLevel.HOLDS;
  private OptionalDouble reaches = OptionalDouble.empty();
  private OptionalDouble eased = OptionalDouble.empty();
  private boolean isLearning;

  private Strips(Channel channel, double limit) {
    this.channel = channel;
    this.limit = limit;
  }

  static Strips of(Channel channel, double limit) {
    return new Strips(channel, limit);
  }

  Strips from(double celsius) {
    from = celsius;
    return this;
  }

  Strips now(double celsius) {
    now = celsius;
    return this;
  }

  Strips to(double celsius) {
    to = celsius;
    return this;
  }

  Strips spread(double kelvin) {
    spread = kelvin;
    return this;
  }

  Strips reaches(double seconds) {
    reaches = OptionalDouble.of(seconds);
    return this;
  }

  Strips eased(double celsius) {
    eased = OptionalDouble.of(celsius);
    return this;
  }

  Strips level(StripLevel wanted) {
    level = wanted;
    return this;
  }

  Strips stale(double seconds) {
    silentSeconds = seconds;
    level = StripLevel.NO_DATA;
    return this;
  }

  Strips learning() {
    isLearning = true;
    level = StripLevel.LEARNING;
    return this;
  }

  /** The same strip after so many seconds without a reading. */
  static StripState silent(StripState strip, double seconds) {
    return new StripState(
        strip.channel(),
        strip.limit(),
        strip.latestCelsius(),
        seconds,
        OptionalDouble.empty(),
        earlier(strip.trace(), seconds),
        new ChannelForecast.NoData(strip.channel(), seconds),
        Optional.empty(),
        StripLevel.NO_DATA,
        OptionalDouble.empty());
  }

  private static Trace earlier(Trace trace, double seconds) {
    long until = Moments.NOW - (long) (seconds * 1e6);
    int size = 0;
    while (size < trace.size() && trace.timeMicros(size) <= until) {
      size++;
    }
    return new Trace(
        IntStream.range(0, size).mapToLong(trace::timeMicros).toArray(),
        IntStream.range(0, size).mapToDouble(trace::value).toArray());
  }

  StripState build() {
    return new StripState(
        channel,
        Optional.of(new Limit(channel, limit, new Provenance(Provenance.Kind.WORKSHOP, "sheet 4"))),
        OptionalDouble.of(now),
        silentSeconds,
        OptionalDouble.of((now - from) / 3),
        trace(),
        forecast(),
        eased.isPresent() ? Optional.of(fan(eased.getAsDouble(), 40)) : Optional.empty(),
        level,
        level == StripLevel.DERATED ? OptionalDouble.of(11) : OptionalDouble.empty());
  }

  private ChannelForecast forecast() {
    if (isLearning) {
      return new ChannelForecast.Learning(channel);
    }
    if (silentSeconds > 0) {
      return new ChannelForecast.NoData(channel, silentSeconds);
    }
    double probability = reaches.isPresent() ? 0.95 : 0.01;
    LimitForecast toLimit =
        new LimitForecast(
            limit, probability, probability, reaches, at(-16), at(-10), at(15), at(25));
    return new ChannelForecast.Ready(channel, now, fan(to, 70), to, Optional.of(toLimit));
  }

  private OptionalDouble at(double offset) {
    return reaches.isPresent()
        ? OptionalDouble.of(reaches.getAsDouble() + offset)
        : OptionalDouble.empty();
  }

  private Fan fan(double end, double timeConstant) {
    int points = 301;
    double[] ahead = new double[points];
    double[][] celsius = new double[Fan.LEVELS.size()][points];
    double whole = 1 - Math.exp(-180 / timeConstant);
    for (int point = 0; point < points; point++) {
      ahead[point] = 2.0 * point;
      double middle = now + (end - now) * (1 - Math.exp(-ahead[point] / timeConstant)) / whole;
      for (int level = 0; level < celsius.length; level++) {
        double wide = spread * Math.sqrt(ahead[point] / 60);
        celsius[level][point] = middle + NORMAL[level] * wide;
      }
    }
    return new Fan(ahead, celsius);
  }

  private Trace trace() {
    int seconds = 180 - (int) silentSeconds;
    long[] times = new long[seconds];
    double[] values = new double[seconds];
    Random noise = new Random(channel.id().hashCode());
    for (int second = 0; second < seconds; second++) {
      times[second] = Moments.NOW - (180 - second) * 1_000_000L;
      double share = Math.sin(Math.PI / 2 * second / 180);
      values[second] = from + (now - from) * share + 0.1 * noise.nextGaussian();
    }
    return new Trace(times, values);
  }
}
