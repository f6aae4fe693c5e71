package steadypull.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.season.Season;
import steadypull.demo.season.SeasonEvent;
import steadypull.demo.season.SeasonSink;
import steadypull.demo.season.SeasonTrip;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/**
 * How often the 80 % bands over trips of the demo season held what came, the present load held and
 * nothing learnt before. Its readings come as a polled link delivers them, some every second, some
 * every ten.
 */
final class SeasonBands {
  static final int[] HORIZONS = {30, 60, 120, 300};

  /** The first minutes of a drive do not count. */
  private static final int FROM_SECOND = 121;

  /** A reading that was not heard anew for longer is none. */
  private static final int HEARD_WITHIN = 12;

  /** Widths at which bands are judged: as they are, half and twice. */
  static final double[] FACTORS = {1, 0.5, 2};

  /** Forecasts, those that held at each factor, and what came below. */
  static final class Count {
    private int all;
    private int below;
    private final int[] held = new int[FACTORS.length];

    /** Share of what came that lay within bands of a width, by index into {@link #FACTORS}. */
    double share(int factor) {
      return (double) held[factor] / all;
    }

    private void add(double came, Fan fan, int horizon) {
      double median = fan.at(Fan.MEDIAN, horizon);
      double down = fan.at(Fan.LEVELS.indexOf(0.10), horizon) - median;
      double up = fan.at(Fan.LEVELS.indexOf(0.90), horizon) - median;
      all++;
      below += came < median + down ? 1 : 0;
      for (int each = 0; each < FACTORS.length; each++) {
        boolean isHeld =
            came >= median + FACTORS[each] * down && came <= median + FACTORS[each] * up;
        held[each] += isHeld ? 1 : 0;
      }
    }

    private void add(Count other) {
      all += other.all;
      below += other.below;
      for (int each = 0; each < FACTORS.length; each++) {
        held[each] += other.held[each];
      }
    }

    @Override
    public String toString() {
      return "%.2f of %d (below %.2f; half %.2f, twice %.2f)"
          .formatted(share(0), all, (double) below / all, share(1), share(2));
    }
  }

  private final Map<String, Count> counts = new TreeMap<>();
  private double hours;

  /** Drives one trip of the season, by the beginning of its start in the town's time. */
  void drive(String start) throws Exception {
    for (SeasonTrip trip : Season.of(1).trips()) {
      if (trip.start().atOffset(trip.offset()).toString().startsWith(start)) {
        drive(trip);
      }
    }
  }

  /** Drives a trip. */
  void drive(SeasonTrip trip) throws Exception {
    Vehicle vehicle = VehicleJson.read(trip.vehicleFile(), "the season's vehicle");
    Vehicle fitted = vehicle.withRig(VehicleJson.readRig(trip.rigFile(), "the season's rig"));
    List<Sample> samples = new ArrayList<>();
    long micros = trip.drive(new Collecting(samples));
    int seconds = (int) (micros / 1_000_000);
    Map<Channel, double[]> heard = heard(samples, seconds);
    ThermalForecaster forecaster = new ThermalForecaster(fitted);
    int next = 0;
    for (int second = 1; second <= seconds; second++) {
      while (next < samples.size() && samples.get(next).timeMicros() <= second * 1_000_000L) {
        forecaster.accept(samples.get(next++));
      }
      Forecast forecast = forecaster.tick(second * 1_000_000L);
      if (second >= FROM_SECOND) {
        count(forecast, second, heard);
      }
    }
    hours += seconds / 3600.0;
  }

  private void count(Forecast forecast, int second, Map<Channel, double[]> heard) {
    for (ChannelForecast each : forecast.channels()) {
      if (each instanceof ChannelForecast.Ready ready) {
        double[] came = heard.getOrDefault(each.channel(), new double[0]);
        for (int horizon : HORIZONS) {
          if (second + horizon < came.length && Double.isFinite(came[second + horizon])) {
            counts
                .computeIfAbsent(each.channel().id() + " " + horizon, _ -> new Count())
                .add(came[second + horizon], ready.fan(), horizon);
          }
        }
      }
    }
  }

  /** The latest reading of each second, degC; none where nothing was heard for long. */
  private static Map<Channel, double[]> heard(List<Sample> samples, int seconds) {
    Map<Channel, double[]> heard = new HashMap<>();
    for (Sample sample : samples) {
      if (Channels.thermal().contains(sample.channel())) {
        double[] all = heard.computeIfAbsent(sample.channel(), _ -> silent(seconds + 1));
        int from = (int) (sample.timeMicros() / 1_000_000) + 1;
        for (int second = from; second < Math.min(all.length, from + HEARD_WITHIN); second++) {
          all[second] = sample.value();
        }
      }
    }
    return heard;
  }

  private static double[] silent(int seconds) {
    double[] silent = new double[seconds];
    Arrays.fill(silent, Double.NaN);
    return silent;
  }

  /** Every channel and horizon whose name begins so, together. */
  Count of(String beginning) {
    Count sum = new Count();
    counts.forEach(
        (name, count) -> {
          if (name.startsWith(beginning)) {
            sum.add(count);
          }
        });
    return sum;
  }

  /** Every channel at one horizon. */
  Count at(int horizon) {
    Count sum = new Count();
    counts.forEach(
        (name, count) -> {
          if (name.endsWith(" " + horizon)) {
            sum.add(count);
          }
        });
    return sum;
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("%.1f h%n".formatted(hours));
    counts.forEach((name, count) -> text.append("%s: %s%n".formatted(name, count)));
    return text.append("all: ").append(of("")).toString();
  }

  private record Collecting(List<Sample> samples, Map<String, Channel> channels)
      implements SeasonSink {
    Collecting(List<Sample> samples) {
      this(samples, new HashMap<>());
    }

    @Override
    public void sample(String channelHeader, long timeMicros, double value) {
      Channel channel =
          channels.computeIfAbsent(channelHeader, header -> Channel.ofHeader(header).orElseThrow());
      samples.add(new Sample(channel, timeMicros, value));
    }

    @Override
    public void happened(SeasonEvent event) {
      // forecasts come from samples alone
    }
  }
}
