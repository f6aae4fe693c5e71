package steadypull.thermal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.Vehicle;

/** Invented vehicles for tests, with the figures of the demo world's vehicle files. */
final class TestVehicles {
  private TestVehicles() {}

  /** The heavy tow vehicle with a water-cooled charge cooler. */
  static Vehicle heavy() {
    return heavy(CoolingLayout.WATER_TO_AIR, 105);
  }

  static Vehicle heavy(CoolingLayout layout, double chargeAirLimit) {
    return new Vehicle(
        "Wattle 2",
        layout,
        limits(chargeAirLimit, 100),
        new Rig(
            OptionalDouble.of(7200),
            OptionalDouble.of(3.8),
            OptionalDouble.of(0.011),
            OptionalDouble.of(0.39)),
        new Driveline(
            List.of(4.2, 2.6, 1.8, 1.35, 1.0, 0.8, 0.65),
            OptionalDouble.of(3.7),
            OptionalDouble.of(3300)),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }

  /** The lighter one that stands on the dynamometer. */
  static Vehicle light() {
    return new Vehicle(
        "Wattle 1",
        CoolingLayout.WATER_TO_AIR,
        limits(108, 105),
        Rig.unknown(),
        Driveline.unknown(),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }

  private static Map<String, Limit> limits(double chargeAir, double chargeCoolant) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    put(limits, Channels.CHARGE_AIR_TEMP_OUT, chargeAir);
    put(limits, Channels.CHARGE_COOLANT_TEMP, chargeCoolant);
    put(limits, Channels.ENGINE_COOLANT_TEMP, 112);
    put(limits, Channels.ENGINE_OIL_TEMP, 130);
    put(limits, Channels.TRANSMISSION_FLUID_TEMP, 120);
    return limits;
  }

  private static void put(Map<String, Limit> limits, Channel channel, double celsius) {
    limits.put(
        channel.id(),
        new Limit(channel, celsius, new Provenance(Provenance.Kind.MAKER, "invented")));
  }
}
