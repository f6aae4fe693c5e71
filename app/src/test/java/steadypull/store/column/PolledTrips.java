package steadypull.store.column;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/**
 * Trips as a reader at polite pace logs them, by a seed: some twenty requests a second whose
 * answers bring one to six values each, a few milliseconds early or late; values counted as the bus
 * counts them; three channels computed once a second, in the steps of the live drive. Rates, scales
 * and sizes of steps: common practice, no source.
 */
record PolledTrips(int count, int minutes, boolean isEven) implements MeasuredTrips {
  private static final long TICK_MICROS = 50_000;

  /**
   * A channel.
   *
   * @param restlessness steps of the bus's number from one reading to the next, standard deviation
   */
  private record Kind(
      String header, int request, double scale, double offset, int most, double restlessness) {}

  /** Requests 0 to 3 are due every 250 ms, 4 to 7 every second, 8 every ten seconds. */
  private static final List<Kind> KINDS =
      List.of(
          new Kind("vehicle_speed[km/h]", 0, 1, 0, 120, 0.5),
          new Kind("manifold_pressure[kPa]", 0, 1.0 / 32, 0, 9000, 60),
          new Kind("engine_speed[r/min]", 1, 0.25, 0, 16_000, 25),
          new Kind("demanded_torque[%]", 1, 1, -125, 250, 0.8),
          new Kind("delivered_torque[%]", 1, 1, -125, 250, 0.8),
          new Kind("engine_load[%]", 2, 100.0 / 255, 0, 255, 1.5),
          new Kind("accelerator_pedal[%]", 2, 100.0 / 255, 0, 255, 1.5),
          new Kind("air_mass_flow[g/s]", 4, 0.01, 0, 40_000, 120),
          new Kind("fuel_rate[L/h]", 4, 0.05, 0, 1400, 10),
          new Kind("engine_coolant_temp[degC]", 4, 1, -40, 170, 0.1),
          new Kind("engine_oil_temp[degC]", 4, 1, -40, 180, 0.1),
          new Kind("intake_air_temp[degC]", 4, 1, -40, 100, 0.1),
          new Kind("charge_air_temp_in[degC]", 5, 1, -40, 250, 1),
          new Kind("charge_air_temp_out[degC]", 5, 1, -40, 160, 0.3),
          new Kind("charge_coolant_temp[degC]", 5, 1, -40, 150, 0.2),
          new Kind("exhaust_temp_before_turbine[degC]", 6, 0.1, -40, 9000, 20),
          new Kind("exhaust_temp_after_turbine[degC]", 6, 0.1, -40, 8000, 20),
          new Kind("transmission_fluid_temp[degC]", 7, 1.0 / 16, -40, 2500, 1.2),
          new Kind("gear[1]", 7, 1, 0, 8, 0.05),
          new Kind("ambient_air_temp[degC]", 8, 1, -40, 90, 0.05),
          new Kind("barometric_pressure[kPa]", 8, 1, 0, 110, 0.05),
          new Kind("module_voltage[V]", 8, 0.001, 0, 15_000, 15));

  private static final List<String> COMPUTED =
      List.of("road_grade[%]", "wheel_torque[N.m]", "wheel_power[kW]");

  /** A season's drive as it is polled. */
  static PolledTrips polled(int count, int minutes) {
    return new PolledTrips(count, minutes, false);
  }

  /** Twenty channels, each five times a second. */
  static PolledTrips even(int hours) {
    return new PolledTrips(1, 60 * hours, true);
  }

  @Override
  public String name() {
    return isEven
        ? "20 channels at 5 Hz, %d min".formatted(minutes)
        : "%d polled drives of %d min".formatted(count, minutes);
  }

  @Override
  public List<String> headers() {
    List<String> measured = KINDS.stream().map(Kind::header).toList();
    return isEven
        ? measured.subList(0, 20)
        : Stream.concat(measured.stream(), COMPUTED.stream()).toList();
  }

  @Override
  public void tell(int trip, SampleSink sink) {
    SplittableRandom random = new SplittableRandom(1000L + trip);
    double[] counts = KINDS.stream().mapToDouble(kind -> kind.most * 0.5).toArray();
    for (long tick = 0; tick < minutes * 1200L; tick++) {
      long due = tick * TICK_MICROS;
      if (isEven) {
        tellEven(tick, due, counts, random, sink);
      } else {
        tellPolled(tick, due, counts, random, sink);
      }
    }
  }

  private void tellEven(
      long tick, long due, double[] counts, SplittableRandom random, SampleSink sink) {
    int quarter = (int) (tick % 4);
    long timeMicros = due + arrivalMicros(random);
    for (int channel = 5 * quarter; channel < 5 * quarter + 5; channel++) {
      sink.sample(channel, timeMicros, next(channel, counts, random));
    }
  }

  private void tellPolled(
      long tick, long due, double[] counts, SplittableRandom random, SampleSink sink) {
    if (tick % 20 == 0 && tick > 0) {
      double power = counts[2] * counts[4] * 0.000_7;
      sink.sample(KINDS.size(), due, Math.rint(100 * power / (1 + counts[0])) / 100);
      sink.sample(KINDS.size() + 1, due, Math.rint(power * 11.7 / (1 + counts[0])));
      sink.sample(KINDS.size() + 2, due, Math.rint(10 * power) / 10);
    }
    long timeMicros = due + arrivalMicros(random);
    int request = request(tick);
    for (int channel = 0; channel < KINDS.size(); channel++) {
      if (KINDS.get(channel).request == request) {
        sink.sample(channel, timeMicros, next(channel, counts, random));
      }
    }
  }

  /** Five ticks a quarter of a second: three for the fast requests, two for the others in turn. */
  private static int request(long tick) {
    int place = (int) (tick % 5);
    if (place < 3) {
      return place;
    }
    int turn = (int) (tick / 5 * 2 + place - 3);
    return turn % 80 == 79 ? 8 : 4 + turn % 8 % 4;
  }

  private static long arrivalMicros(SplittableRandom random) {
    return 8000 + (long) (1200 * random.nextGaussian());
  }

  private static double next(int channel, double[] counts, SplittableRandom random) {
    Kind kind = KINDS.get(channel);
    double pull = (kind.most * 0.5 - counts[channel]) * 0.002;
    double step = pull + kind.restlessness * random.nextGaussian();
    counts[channel] = Math.clamp(counts[channel] + step, 0, kind.most);
    return Math.round(counts[channel]) * kind.scale + kind.offset;
  }
}
