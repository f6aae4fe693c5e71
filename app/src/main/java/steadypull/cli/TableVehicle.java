package steadypull.cli;

import java.util.List;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.TableException;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * The vehicle behind a table that comes without one: cautious limits, layout from its channels. A
 * charge-coolant temperature is only found where water cools the charge air.
 */
final class TableVehicle {
  private TableVehicle() {}

  static Vehicle of(String name, List<Sample> samples) {
    return of(
        name,
        samples.stream().anyMatch(each -> each.channel().equals(Channels.CHARGE_COOLANT_TEMP)));
  }

  static Vehicle of(String name, IncomingTable table) throws TableException {
    return of(name, table.hasSampleOf(Channels.CHARGE_COOLANT_TEMP));
  }

  private static Vehicle of(String name, boolean isCooledByWater) {
    return Vehicle.unknown(
        name, isCooledByWater ? CoolingLayout.WATER_TO_AIR : CoolingLayout.AIR_TO_AIR);
  }
}
