package steadypull.vehicle.role;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** An invented vehicle whose maker has wired sensors to parameters as chance would have it. */
final class WiredVehicle {
  private final Map<String, ToDoubleFunction<Drive>> wires = new LinkedHashMap<>();
  private final Map<Channel, Sensor> engine =
      new LinkedHashMap<>(
          Map.of(
              Channels.AMBIENT_AIR_TEMP, Sensor.OUTSIDE_AIR,
              Channels.MANIFOLD_PRESSURE, Sensor.MANIFOLD_PRESSURE,
              Channels.BAROMETRIC_PRESSURE, Sensor.BAROMETER,
              Channels.ENGINE_SPEED, Sensor.ENGINE_SPEED,
              Channels.VEHICLE_SPEED, Sensor.VEHICLE_SPEED));

  private int secondsPerReading = 1;

  /** One with every sensor at the place that the demo vehicles' files name. */
  static WiredVehicle usual() {
    return new WiredVehicle()
        .wire("01.0F", Sensor.INTAKE_AIR)
        .wire("01.75.2", Sensor.CHARGE_AIR_IN)
        .wire("01.77.1", Sensor.CHARGE_AIR_OUT)
        .wire("01.05", Sensor.ENGINE_COOLANT)
        .wire("01.67.1", Sensor.ENGINE_COOLANT)
        .wire("01.67.2", Sensor.CHARGE_COOLANT)
        .wire("01.78.1", Sensor.EXHAUST_BEFORE_TURBINE)
        .wire("01.78.2", Sensor.EXHAUST_AFTER_TURBINE);
  }

  /** Connects a sensor to a parameter. */
  WiredVehicle wire(String signalKey, Sensor sensor) {
    return wire(signalKey, drive -> drive.read(sensor));
  }

  /** Connects something that is made of the drive to a parameter; asked for once a second. */
  WiredVehicle wire(String signalKey, ToDoubleFunction<Drive> reading) {
    wires.put(signalKey, reading);
    return this;
  }

  /** Takes a sensor away. */
  WiredVehicle cut(String signalKey) {
    wires.remove(signalKey);
    return this;
  }

  /** Takes a channel away. */
  WiredVehicle without(Channel channel) {
    engine.remove(channel);
    return this;
  }

  /** Asks the sensors in question only so often. */
  WiredVehicle askedEvery(int seconds) {
    secondsPerReading = seconds;
    return this;
  }

  /** What is seen of a whole drive. */
  SensorEvidence drive(Drive drive) {
    return drive(drive, SensorEvidence.none(), Integer.MAX_VALUE);
  }

  /** What is seen up to a second of a drive, added to what was seen before. */
  SensorEvidence drive(Drive drive, SensorEvidence before, int until) {
    SensorWatch watch = new SensorWatch(before);
    for (int second = (int) drive.seconds(); second < until && !drive.isOver(); second++) {
      drive.advanceTo(second);
      long micros = second * 1_000_000L;
      engine.forEach(
          (channel, sensor) -> watch.heard(new Sample(channel, micros, drive.read(sensor))));
      boolean isAsked = second % secondsPerReading == 0;
      wires.forEach((key, wire) -> ask(watch, key, micros, wire.applyAsDouble(drive), isAsked));
    }
    return watch.evidence();
  }

  /** A sensor lives on while nobody asks for it. */
  private static void ask(
      SensorWatch watch, String key, long micros, double reading, boolean isAsked) {
    if (isAsked) {
      watch.heard(key, micros, reading);
    }
  }
}
