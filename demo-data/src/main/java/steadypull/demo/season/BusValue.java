package steadypull.demo.season;

import steadypull.demo.plant.Sensor;

/**
 * How a value travels: as a whole number of so many steps. Value = raw * scale + offset, which is
 * also how the reader decodes it, to the last bit. Immutable.
 *
 * @param channelHeader id and unit
 * @param sensor what is behind it
 * @param scale one step, in the channel's unit
 * @param offset the value of a raw 0
 * @param greatest raw number that the bytes hold
 */
record BusValue(String channelHeader, Sensor sensor, double scale, double offset, int greatest) {
  private static final int ONE_BYTE = 0xFF;
  private static final int TWO_BYTES = 0xFFFF;

  /** A temperature in one byte: A - 40. */
  static BusValue celsius(Sensor sensor) {
    return new BusValue(sensor.channel() + "[degC]", sensor, 1, -40, ONE_BYTE);
  }

  /** An exhaust temperature: (256 A + B) / 10 - 40. */
  static BusValue exhaust(Sensor sensor) {
    return new BusValue(sensor.channel() + "[degC]", sensor, 1.0 / 10, -40, TWO_BYTES);
  }

  /** A share in one byte: A * 100 / 255. */
  static BusValue percent(Sensor sensor) {
    return new BusValue(sensor.channel() + "[%]", sensor, 100.0 / 255, 0, ONE_BYTE);
  }

  /** A torque in one byte: A - 125. */
  static BusValue torque(Sensor sensor) {
    return new BusValue(sensor.channel() + "[%]", sensor, 1, -125, ONE_BYTE);
  }

  /** A quantity in one byte whose step is its unit. */
  static BusValue one(Sensor sensor, String unit) {
    return new BusValue(sensor.channel() + "[" + unit + "]", sensor, 1, 0, ONE_BYTE);
  }

  /** A quantity in two bytes. */
  static BusValue two(Sensor sensor, String unit, double scale) {
    return new BusValue(sensor.channel() + "[" + unit + "]", sensor, scale, 0, TWO_BYTES);
  }

  /** The value that arrives for a value that was sensed. */
  double arriving(double sensed) {
    long raw = Math.clamp(Math.round((sensed - offset) / scale), 0, greatest);
    return raw * scale + offset;
  }
}
