package steadypull.exchange;

import steadypull.channel.Channel;
import steadypull.channel.UnitConversion;

/**
 * One column of a table that is taken: which channel it feeds and how its unit becomes the
 * channel's.
 *
 * @param header as written in the table
 * @param index place among the fields of a row, from 0
 * @param isHeld whether its values are repeated until the next one was polled
 */
record TableColumn(
    String header, int index, Channel channel, UnitConversion conversion, boolean isHeld) {
  /** A column that is written so; its unit must be one that can be converted. */
  static TableColumn of(String header, int index, Channel written, boolean isHeld) {
    UnitConversion conversion = ColumnHeader.conversion(written).orElseThrow();
    return new TableColumn(header, index, ColumnHeader.channel(written), conversion, isHeld);
  }
}
