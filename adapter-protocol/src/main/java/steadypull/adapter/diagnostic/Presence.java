package steadypull.adapter.diagnostic;

import java.util.OptionalInt;
import steadypull.adapter.frame.Octets;

/**
 * How the first data byte of a parameter tells whether a value is there. Immutable.
 *
 * @param sensorBit set where the sensor exists; empty if it always does
 * @param noDataBit set while the sensor has nothing to say; empty if the layout knows no such bit
 */
record Presence(OptionalInt sensorBit, OptionalInt noDataBit) {

  /**
   * Reads a table cell.
   *
   * @param cell {@code -}, a bit, or two bits joined by an exclamation mark
   */
  static Presence parse(String cell) {
    int mark = cell.indexOf('!');
    if (mark < 0) {
      return new Presence(bit(cell), OptionalInt.empty());
    }
    return new Presence(bit(cell.substring(0, mark)), bit(cell.substring(mark + 1)));
  }

  private static OptionalInt bit(String cell) {
    return cell.equals("-") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(cell));
  }

  /** Whether the vehicle has the sensor. */
  boolean isFitted(Octets data) {
    return sensorBit.isEmpty() || isSet(data, sensorBit.getAsInt());
  }

  /** Whether the sensor is there and has something to say. */
  boolean hasData(Octets data) {
    return isFitted(data) && (noDataBit.isEmpty() || !isSet(data, noDataBit.getAsInt()));
  }

  private static boolean isSet(Octets data, int bit) {
    return data.size() > 0 && ((data.at(0) >> bit) & 1) == 1;
  }
}
