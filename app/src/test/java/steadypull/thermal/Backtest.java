package steadypull.thermal;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Scenario;
import steadypull.vehicle.Vehicle;

/** Runs the forecaster over an invented drive and keeps what it said and what came. */
final class Backtest {
  static final List<Integer> HORIZONS = List.of(30, 60, 120);

  /** Channels whose derating is felt; the ones that an early warning is about. */
  static final List<Channel> DERATING =
      List.of(Channels.CHARGE_AIR_TEMP_OUT, Channels.CHARGE_COOLANT_TEMP);

  private final Map<Channel, List<Double>> probabilities = new HashMap<>();
  private final Map<Channel, List<ChannelForecast>> said = new HashMap<>();
  private final Map<Channel, Map<Integer, Double>> heard = new HashMap<>();
  private final List<Derate> derates = new ArrayList<>();
  private long tickNanos;
  private int ticks;

  /** Runs a scenario to its end. */
  static Backtest of(Scenario scenario, long seed, Vehicle vehicle, Set<Channel> missing) {
    Backtest backtest = new Backtest();
    ThermalForecaster forecaster = new ThermalForecaster(vehicle);
    DerateDetector detector = new DerateDetector(vehicle);
    DemoSamples samples = new DemoSamples(DemoWorld.drive(scenario, seed), missing);
    for (int second = 1; !samples.isOver(); second++) {
      for (Sample sample : samples.until(second)) {
        forecaster.accept(sample);
        detector.accept(sample);
        backtest.heard(sample, second);
      }
      long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      Forecast forecast = forecaster.tick(second * 1_000_000L);
      backtest.tickNanos += ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
      backtest.ticks++;
      backtest.note(forecast);
      backtest.derates.add(detector.tick(second * 1_000_000L));
    }
    return backtest;
  }

  private void heard(Sample sample, int second) {
    heard.computeIfAbsent(sample.channel(), _ -> new HashMap<>()).put(second, sample.value());
  }

  private void note(Forecast forecast) {
    for (ChannelForecast each : forecast.channels()) {
      said.computeIfAbsent(each.channel(), _ -> new ArrayList<>()).add(each);
      double probability =
          each instanceof ChannelForecast.Ready ready
              ? ready.toLimit().map(LimitForecast::probability180).orElse(0.0)
              : 0;
      probabilities.computeIfAbsent(each.channel(), _ -> new ArrayList<>()).add(probability);
    }
  }

  /** Second at which torque began to be cut at a hot channel, if ever. */
  OptionalDouble derateBegins() {
    double[] beginnings = derateBeginnings();
    return beginnings.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(beginnings[0]);
  }

  /** Every second at which torque began to be cut at a hot channel. */
  double[] derateBeginnings() {
    return derates.stream()
        .filter(Derate.Active.class::isInstance)
        .map(Derate.Active.class::cast)
        .mapToDouble(active -> active.sinceMicros() / 1e6)
        .distinct()
        .toArray();
  }

  List<Derate> derates() {
    return derates;
  }

  /** First second from which the probability stayed at half or more for three seconds, if any. */
  OptionalDouble firstAdvisory(List<Channel> channels) {
    for (int second = 3; second <= ticks; second++) {
      for (Channel channel : channels) {
        if (probability(channel, second) >= 0.5
            && probability(channel, second - 1) >= 0.5
            && probability(channel, second - 2) >= 0.5) {
          return OptionalDouble.of(second);
        }
      }
    }
    return OptionalDouble.empty();
  }

  double probability(Channel channel, int second) {
    List<Double> all = probabilities.getOrDefault(channel, List.of());
    int index = second - 1 - (ticks - all.size());
    return index < 0 ? 0 : all.get(index);
  }

  /** Greatest probability within 600 s of a channel over the whole drive. */
  double greatestWithin600(Channel channel) {
    return said.getOrDefault(channel, List.of()).stream()
        .filter(ChannelForecast.Ready.class::isInstance)
        .map(ChannelForecast.Ready.class::cast)
        .flatMap(ready -> ready.toLimit().stream())
        .mapToDouble(LimitForecast::probability600)
        .max()
        .orElse(0);
  }

  /** Greatest probability within 180 s of a channel over the whole drive. */
  double greatestProbability(Channel channel) {
    return probabilities.getOrDefault(channel, List.of()).stream()
        .mapToDouble(Double::doubleValue)
        .max()
        .orElse(0);
  }

  /** Share of forecasts whose 80 % band held what was read later; the first two minutes not. */
  Coverage coverage(Channel channel, int horizon) {
    return coverage(channel, horizon, 1);
  }

  /** The same if every band had been so many times as wide about its median. */
  Coverage coverage(Channel channel, int horizon, double factor) {
    int held = 0;
    int below = 0;
    int all = 0;
    double width = 0;
    List<ChannelForecast> forecasts = said.getOrDefault(channel, List.of());
    int late = ticks - forecasts.size();
    for (int index = 0; index < forecasts.size(); index++) {
      int second = index + 1 + late;
      Double came = heard.getOrDefault(channel, Map.of()).get(second + horizon);
      if (second > 120
          && came != null
          && forecasts.get(index) instanceof ChannelForecast.Ready ready) {
        double truth = came;
        double median = ready.fan().at(Fan.MEDIAN, horizon);
        double low = median + factor * (ready.fan().at(1, horizon) - median);
        double high = median + factor * (ready.fan().at(5, horizon) - median);
        all++;
        held += truth >= low && truth <= high ? 1 : 0;
        below += truth < low ? 1 : 0;
        width += high - low;
      }
    }
    return new Coverage(held, below, all, all == 0 ? 0 : width / all);
  }

  /** How often a band held the truth. */
  record Coverage(int held, int below, int all, double meanWidth) {
    double share() {
      return all == 0 ? 0 : (double) held / all;
    }
  }

  double microsPerTick() {
    return tickNanos / 1e3 / ticks;
  }

  int ticks() {
    return ticks;
  }

  ChannelForecast said(Channel channel, int second) {
    List<ChannelForecast> all = said.getOrDefault(channel, List.of());
    return all.get(second - 1 - (ticks - all.size()));
  }

  double heard(Channel channel, int second) {
    return heard.getOrDefault(channel, Map.of()).getOrDefault(second, 0.0);
  }
}
