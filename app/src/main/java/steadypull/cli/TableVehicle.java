package steadypull.cli;

import steadypull.channel.Channels;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * The vehicle behind a table that comes without one: cautious limits, layout from its channels. A
 * charge-coolant temperature is only found where water cools the charge air.
 */
final class TableVehicle {
  private TableVehicle() {}

  /** The same, and the whole table is read and so found good. */
  static Vehicle ofWhole(String name, IncomingTable table) throws TableException {
    boolean[] isCooledByWater = {false};
    table.<RuntimeException>read(
        sample -> isCooledByWater[0] |= sample.channel().equals(Channels.CHARGE_COOLANT_TEMP),
        TransferWatch.NONE);
    return of(name, isCooledByWater[0]);
  }

  static Vehicle of(String name, IncomingTable table) throws TableException {
    return of(name, table.hasSampleOf(Channels.CHARGE_COOLANT_TEMP));
  }

  private static Vehicle of(String name, boolean isCooledByWater) {
    return Vehicle.unknown(
        name, isCooledByWater ? CoolingLayout.WATER_TO_AIR : CoolingLayout.AIR_TO_AIR);
  }
}
