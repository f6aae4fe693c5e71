package steadypull.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** Reads from the first seconds of a trip whether its sensors agree. */
final class ColdSoakReading {
  /** Common practice: all within 2 to 3 K before the first start. */
  private static final double AGREE_KELVIN = 3;

  /** An engine that is warmer than the air by more was driven that day (our choice). */
  private static final double COLD_KELVIN = 8;

  private static final int SECONDS = 10;
  private static final int LEAST_SENSORS = 3;

  private static final List<Channel> FLUIDS =
      List.of(
          Channels.AMBIENT_AIR_TEMP,
          Channels.CHARGE_COOLANT_TEMP,
          Channels.ENGINE_COOLANT_TEMP,
          Channels.ENGINE_OIL_TEMP,
          Channels.TRANSMISSION_FLUID_TEMP);

  /** A running engine warms and blows this air within seconds. */
  private static final List<Channel> AIR =
      List.of(Channels.INTAKE_AIR_TEMP, Channels.CHARGE_AIR_TEMP_IN, Channels.CHARGE_AIR_TEMP_OUT);

  /** What a warm engine does not warm, best first. */
  private static final List<Channel> COLDEST =
      List.of(
          Channels.AMBIENT_AIR_TEMP, Channels.CHARGE_COOLANT_TEMP, Channels.CHARGE_AIR_TEMP_OUT);

  private ColdSoakReading() {}

  static ColdSoak of(TripSeconds trip) {
    Map<Channel, Double> read = read(trip);
    double[] all = read.values().stream().mapToDouble(Double::doubleValue).toArray();
    double middle = Figures.median(all).orElse(Double.NaN);
    double outside =
        COLDEST.stream().filter(read::containsKey).map(read::get).findFirst().orElse(Double.NaN);
    if (all.length < LEAST_SENSORS || !(Math.abs(middle - outside) <= COLD_KELVIN)) {
      return new ColdSoak.NotTold();
    }
    Channel farthest = read.keySet().iterator().next();
    for (Channel channel : read.keySet()) {
      farthest =
          Math.abs(away(read, channel, middle)) > Math.abs(away(read, farthest, middle))
              ? channel
              : farthest;
    }
    double kelvin = away(read, farthest, middle);
    return Math.abs(kelvin) <= AGREE_KELVIN
        ? new ColdSoak.Agree(all.length, Math.abs(kelvin))
        : new ColdSoak.Apart(farthest, kelvin);
  }

  private static double away(Map<Channel, Double> read, Channel channel, double middle) {
    return read.getOrDefault(channel, middle) - middle;
  }

  private static Map<Channel, Double> read(TripSeconds trip) {
    OptionalDouble turning = Figures.most(trip.span(Channels.ENGINE_SPEED, 0, SECONDS));
    boolean isStanding = turning.isPresent() && turning.getAsDouble() == 0;
    Map<Channel, Double> read = new LinkedHashMap<>();
    Stream.concat(FLUIDS.stream(), isStanding ? AIR.stream() : Stream.empty())
        .forEach(
            channel ->
                Figures.median(trip.span(channel, 0, SECONDS))
                    .ifPresent(celsius -> read.put(channel, celsius)));
    return read;
  }
}
