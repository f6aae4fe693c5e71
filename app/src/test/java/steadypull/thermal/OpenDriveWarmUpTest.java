package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

/**
 * A real engine that warms up, where the drive is at hand ("Automotive OBD-II Dataset", DOI
 * 10.35097/1130, CC BY 4.0, {@code drive-1.csv.gz}): from 60 degC on, at every new degree, when
 * will it be at 80? The forecaster knows nothing of the car but its channels. Beside it stands one
 * store with the last load held: C dT/dt = a air flow - k (T - outside), a and k fitted by least
 * squares to everything driven until then, the air flow of the last quarter of a minute held. Ours
 * errs by 44 % of the time on the mean of 20 degrees, the one store by 56 % (28 November 2026).
 */
@EnabledIfEnvironmentVariable(named = "STEADYPULL_OPEN_DRIVES", matches = ".+")
class OpenDriveWarmUpTest {
  private static final int POLLED = 10;
  private static final double FROM = 60;
  private static final double UNTIL = 80;

  /** As far as a forecast reaches; whoever says "never" is taken to have said this. */
  private static final double FARTHEST_SECONDS = 600;

  /** By column behind the time; the throttle's and the pedal's second tell nothing here. */
  private static final Map<Integer, Channel> COLUMNS =
      Map.of(
          0, Channels.ENGINE_COOLANT_TEMP,
          1, Channels.MANIFOLD_PRESSURE,
          2, Channels.ENGINE_SPEED,
          3, Channels.VEHICLE_SPEED,
          4, Channels.INTAKE_AIR_TEMP,
          5, Channels.AIR_MASS_FLOW,
          7, Channels.AMBIENT_AIR_TEMP,
          8, Channels.ACCELERATOR_PEDAL);

  private static final Vehicle CAR =
      Vehicle.unknown("car", CoolingLayout.AIR_TO_AIR)
          .withLimit(
              new Limit(
                  Channels.ENGINE_COOLANT_TEMP, UNTIL, new Provenance(Provenance.Kind.OWNER, "")));

  /** A new degree of coolant, and when each of the two forecasters has it at 80 degC. */
  private record Start(double seconds, double ours, double oneStore) {}

  @Test
  void theTimeToEightyDegreesIsForetoldNoWorseThanByOneStoreWithTheLastLoadHeld() throws Exception {
    List<Start> starts = new ArrayList<>();
    double reached = drive(samples("drive-1.csv.gz"), starts);

    double ours = 0;
    double oneStore = 0;
    for (Start start : starts) {
      double truth = reached - start.seconds();
      ours += Math.abs(start.ours() - truth) / truth / starts.size();
      oneStore += Math.abs(start.oneStore() - truth) / truth / starts.size();
    }
    assertThat(starts).hasSize(20);
    assertThat(ours)
        .as("mean error of ours, of the one store %.2f", oneStore)
        .isLessThanOrEqualTo(oneStore);
  }

  /** Notes every new degree from 60 on; returns the second at which the coolant was at 80. */
  private static double drive(List<Sample> samples, List<Start> starts) {
    ThermalForecaster forecaster = new ThermalForecaster(CAR);
    OneStore oneStore = new OneStore();
    double hottest = FROM - 1;
    long nextMicros = 1_000_000;
    for (Sample sample : samples) {
      while (nextMicros <= sample.timeMicros()) {
        Forecast forecast = forecaster.tick(nextMicros);
        oneStore.second();
        if (oneStore.celsius >= UNTIL) {
          return nextMicros / 1e6;
        }
        if (oneStore.celsius > hottest) {
          hottest = oneStore.celsius;
          starts.add(new Start(nextMicros / 1e6, ours(forecast), oneStore.secondsTo(UNTIL)));
        }
        nextMicros += 1_000_000;
      }
      forecaster.accept(sample);
      oneStore.accept(sample);
    }
    return Double.NaN;
  }

  private static double ours(Forecast forecast) {
    OptionalDouble seconds =
        forecast.of(Channels.ENGINE_COOLANT_TEMP).orElseThrow()
                instanceof ChannelForecast.Ready ready
            ? ready.toLimit().orElseThrow().seconds()
            : OptionalDouble.empty();
    return Math.min(FARTHEST_SECONDS, seconds.orElse(FARTHEST_SECONDS));
  }

  /** Rate = a air flow - k above outside, by least squares over half minutes. */
  private static final class OneStore {
    private static final int SPAN = 30;

    /** Of 15, 60 and 120 s the one with which it errs least. */
    private static final int HELD_SECONDS = 15;

    private final double[] air = new double[HELD_SECONDS];
    private double celsius = Double.NaN;
    private double outside = 15;
    private double airFlow;
    private int seconds;
    private double begin = Double.NaN;
    private double sumAir;
    private double sumAbove;
    private double aa;
    private double ak;
    private double kk;
    private double ar;
    private double kr;

    void accept(Sample sample) {
      if (sample.channel().equals(Channels.ENGINE_COOLANT_TEMP)) {
        celsius = sample.value();
      } else if (sample.channel().equals(Channels.AMBIENT_AIR_TEMP)) {
        outside = sample.value();
      } else if (sample.channel().equals(Channels.AIR_MASS_FLOW)) {
        airFlow = sample.value();
      }
    }

    void second() {
      air[seconds % air.length] = airFlow;
      if (seconds % SPAN == 0) {
        if (!Double.isNaN(begin)) {
          learn((celsius - begin) / SPAN, sumAir / SPAN, sumAbove / SPAN);
        }
        begin = celsius;
        sumAir = 0;
        sumAbove = 0;
      }
      sumAir += airFlow;
      sumAbove += celsius - outside;
      seconds++;
    }

    private void learn(double rate, double flow, double above) {
      aa += flow * flow;
      ak += flow * above;
      kk += above * above;
      ar += flow * rate;
      kr += above * rate;
    }

    double secondsTo(double target) {
      double determinant = aa * kk - ak * ak;
      double a = (ar * kk - kr * ak) / determinant;
      double k = Math.max(1e-6, -(kr * aa - ar * ak) / determinant);
      double held = 0;
      for (double flow : air) {
        held += flow / Math.min(air.length, seconds);
      }
      double settles = outside + a * held / k;
      return settles <= target
          ? FARTHEST_SECONDS
          : Math.min(FARTHEST_SECONDS, Math.log((settles - celsius) / (settles - target)) / k);
    }
  }

  /** The value of each row whose turn it was; the others repeat it. */
  private static List<Sample> samples(String name) throws IOException {
    Path drive = Path.of(System.getenv("STEADYPULL_OPEN_DRIVES")).resolve(name);
    List<Sample> samples = new ArrayList<>();
    try (BufferedReader text =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(drive)), StandardCharsets.UTF_8))) {
      List<String> lines = text.lines().skip(1).toList();
      LocalTime start = time(lines.getFirst());
      for (int row = 0; row < lines.size(); row++) {
        int column = row % POLLED;
        String cell = List.of(lines.get(row).split(",", -1)).get(1 + column);
        if (COLUMNS.containsKey(column) && !cell.isEmpty()) {
          long micros = Duration.between(start, time(lines.get(row))).toNanos() / 1000;
          samples.add(
              new Sample(
                  Objects.requireNonNull(COLUMNS.get(column)), micros, Double.parseDouble(cell)));
        }
      }
    }
    return samples;
  }

  private static LocalTime time(String line) {
    return LocalTime.parse(line.substring(0, line.indexOf(',')));
  }
}
