package steadypull.vehicle;

import java.util.LinkedHashMap;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Cautious limits for a vehicle of which nobody has said more (common practice, no source). Every
 * one is to be replaced by the maker's or the workshop's figure.
 *
 * <p>Engine coolant must also stay clear of boiling, which depends on the cap and the height: see
 * {@link PressureCap}.
 */
public final class DefaultLimits {
  private static final Provenance PROVENANCE =
      new Provenance(Provenance.Kind.DEFAULT, "cautious default");

  private DefaultLimits() {}

  /** The limits by channel id, most general first; provenance {@code DEFAULT}. */
  public static Map<String, Limit> of(CoolingLayout layout) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    put(limits, Channels.ENGINE_COOLANT_TEMP, 112);
    switch (layout) {
      case AIR_TO_AIR -> put(limits, Channels.CHARGE_AIR_TEMP_OUT, 85);
      case WATER_TO_AIR -> {
        put(limits, Channels.CHARGE_COOLANT_TEMP, 100);
        put(limits, Channels.CHARGE_AIR_TEMP_OUT, 105);
      }
    }
    put(limits, Channels.ENGINE_OIL_TEMP, 130);
    put(limits, Channels.TRANSMISSION_FLUID_TEMP, 120);
    put(limits, Channels.EXHAUST_TEMP_BEFORE_TURBINE, 720);
    return limits;
  }

  private static void put(Map<String, Limit> limits, Channel channel, double celsius) {
    limits.put(channel.id(), new Limit(channel, celsius, PROVENANCE));
  }
}
