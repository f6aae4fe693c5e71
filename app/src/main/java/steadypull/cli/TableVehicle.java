package steadypull.cli;

import java.util.List;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** The vehicle behind a table that comes without one: cautious limits, layout from its channels. */
final class TableVehicle {
  private TableVehicle() {}

  /** A charge-coolant temperature is only found where water cools the charge air. */
  static Vehicle of(String name, List<Sample> samples) {
    boolean water =
        samples.stream().anyMatch(each -> each.channel().equals(Channels.CHARGE_COOLANT_TEMP));
    return Vehicle.unknown(name, water ? CoolingLayout.WATER_TO_AIR : CoolingLayout.AIR_TO_AIR);
  }
}
