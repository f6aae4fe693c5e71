package steadypull.vehicle.role;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Watches temperature sensors while the vehicle is driven: once a second, what each read last is
 * set against what the engine does. Memory does not grow with the length of the drive. Times are
 * those of the readings, in microseconds on one clock; used by one thread at a time.
 */
public final class SensorWatch {
  private static final long SECOND_MICROS = 1_000_000;

  private static final long ENGINE_FRESH_MICROS = 5 * SECOND_MICROS;
  private static final long WEATHER_FRESH_MICROS = 120 * SECOND_MICROS;

  /** As slow as charge air pipes and the sensors in them (estimated). */
  private static final double PRESSURE_SECONDS = 15;

  private static final double RUNNING_TURNS_PER_MINUTE = 400;
  private static final double MOVING_KILOMETRES_PER_HOUR = 20;
  private static final double SEA_LEVEL_KILOPASCALS = 101.325; // ISO 2533:1975

  /** A vehicle that was not heard for so long may have rested; whether it has, its water tells. */
  private static final long REST_SECONDS = 1800;

  private final Map<Channel, Sample> engine = new HashMap<>();
  private final Map<String, Watched> sensors = new HashMap<>();
  private RestCheck rest = new RestCheck();
  private final SlowMean pressure = new SlowMean(PRESSURE_SECONDS);
  private long second = Long.MIN_VALUE;

  /** Goes on from what was seen on earlier drives. */
  public SensorWatch(SensorEvidence before) {
    before.sensors().forEach((key, known) -> sensors.put(key, new Watched(known)));
  }

  /** Takes what a channel says; only what the engine and the weather do matters here. */
  public void heard(Sample sample) {
    passTo(sample.timeMicros());
    engine.put(sample.channel(), sample);
  }

  /** Takes what a sensor reads; a signal whose place is not in question is left aside. */
  public void heard(String signalKey, long timeMicros, double celsius) {
    if (Medium.of(signalKey).isPresent()) {
      passTo(timeMicros);
      sensors.computeIfAbsent(signalKey, key -> new Watched()).read(timeMicros, celsius);
    }
  }

  /** What has been seen up to now, earlier drives included. */
  public SensorEvidence evidence() {
    Map<String, SensorRecord> records = new HashMap<>();
    sensors.forEach((key, sensor) -> sensor.known().ifPresent(known -> records.put(key, known)));
    return new SensorEvidence(records);
  }

  private void passTo(long timeMicros) {
    long now = Math.floorDiv(timeMicros, SECOND_MICROS);
    if (now > second) {
      if (second != Long.MIN_VALUE) {
        if (now - second > REST_SECONDS) {
          rest = new RestCheck();
        }
        look(now * SECOND_MICROS);
      }
      second = now;
    }
  }

  private void look(long now) {
    OptionalDouble outside = latest(Channels.AMBIENT_AIR_TEMP, now, WEATHER_FRESH_MICROS);
    boolean isRunning = isRunning(now);
    rest.look(now, isRunning, outside, sensors);
    OptionalDouble manifold = latest(Channels.MANIFOLD_PRESSURE, now, ENGINE_FRESH_MICROS);
    OptionalDouble air = outside.isPresent() ? outside : coolestAir();
    if (isRunning && !isCleaning(now) && manifold.isPresent() && air.isPresent()) {
      Moment moment = moment(now, pressure.next(now, manifold.getAsDouble()), air.getAsDouble());
      sensors.values().forEach(sensor -> sensor.take(now, moment));
      WaterCompare.look(now, sensors);
    }
  }

  private Moment moment(long now, double manifoldKilopascals, double outsideCelsius) {
    OptionalDouble speed = latest(Channels.VEHICLE_SPEED, now, ENGINE_FRESH_MICROS);
    return new Moment(
        outsideCelsius,
        manifoldKilopascals,
        latest(Channels.BAROMETRIC_PRESSURE, now, WEATHER_FRESH_MICROS)
            .orElse(SEA_LEVEL_KILOPASCALS),
        speed.isEmpty() || speed.getAsDouble() >= MOVING_KILOMETRES_PER_HOUR);
  }

  /** An engine that does not tell its speed runs, as far as anybody can tell. */
  private boolean isRunning(long now) {
    OptionalDouble turns = latest(Channels.ENGINE_SPEED, now, ENGINE_FRESH_MICROS);
    return turns.isEmpty() || turns.getAsDouble() >= RUNNING_TURNS_PER_MINUTE;
  }

  /** While a particulate filter regenerates, fuel and not load heats the exhaust. */
  private boolean isCleaning(long now) {
    return latest(Channels.FILTER_REGENERATION, now, WEATHER_FRESH_MICROS).orElse(0) > 0;
  }

  private OptionalDouble coolestAir() {
    return sensors.entrySet().stream()
        .filter(each -> Medium.of(each.getKey()).equals(Optional.of(Medium.AIR)))
        .flatMapToDouble(each -> each.getValue().coolest().stream())
        .min();
  }

  private OptionalDouble latest(Channel channel, long now, long freshMicros) {
    Sample sample = engine.get(channel);
    return sample != null && now - sample.timeMicros() <= freshMicros
        ? OptionalDouble.of(sample.value())
        : OptionalDouble.empty();
  }
}
