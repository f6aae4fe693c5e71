package steadypull.drive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitConversion;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleSignal;
import steadypull.vehicle.role.Medium;

/**
 * Which signal of the adapter feeds which channel of this vehicle. The usual sources are those of
 * the channel table (SAE J1979 service 01); the vehicle's own roles come first. Immutable.
 */
final class SensorRoles {
  private final Map<String, List<Channel>> channelsBySignal = new LinkedHashMap<>();
  private final Map<Channel, List<String>> signalsByChannel = new LinkedHashMap<>();

  /** Signals that the vehicle's own roles have put somewhere. */
  private final Set<String> placed;

  private final Map<String, UnitConversion> conversions = new HashMap<>();

  SensorRoles(Vehicle vehicle) {
    for (VehicleSignal signal : vehicle.signals()) {
      feed(signal.channel(), keyOf(signal));
      UnitConversion.between(signal.unit(), signal.channel().unit())
          .ifPresent(conversion -> conversions.put(keyOf(signal), conversion));
    }
    for (SignalSource source : vehicle.sources()) {
      Channels.find(source.channelId()).ifPresent(channel -> feed(channel, source.signalKey()));
    }
    placed = Set.copyOf(channelsBySignal.keySet());
    feedPlace(Channels.ENGINE_COOLANT_TEMP, "01.05", "01.67.1");
    if (vehicle.layout() == CoolingLayout.WATER_TO_AIR) {
      feedPlace(Channels.CHARGE_COOLANT_TEMP, "01.67.2");
    }
    feedPlace(Channels.CHARGE_AIR_TEMP_IN, "01.75.2");
    feedPlace(Channels.CHARGE_AIR_TEMP_OUT, "01.77.1");
    feed(Channels.INTAKE_AIR_TEMP, "01.0F", "01.68.1");
    feed(Channels.AMBIENT_AIR_TEMP, "01.46");
    feed(Channels.ENGINE_OIL_TEMP, "01.5C");
    feedPlace(Channels.EXHAUST_TEMP_BEFORE_TURBINE, "01.75.3");
    feedPlace(Channels.EXHAUST_TEMP_AFTER_TURBINE, "01.75.4");
    feedPlace(Channels.EXHAUST_GAS_TEMP, "01.78.1");
    feed(Channels.FILTER_REGENERATION, "01.8B.1");
    feed(Channels.BAROMETRIC_PRESSURE, "01.33");
    feed(Channels.MANIFOLD_PRESSURE, "01.87.1", "01.0B");
    feed(Channels.AIR_MASS_FLOW, "01.66.1", "01.10");
    feed(Channels.ENGINE_SPEED, "01.0C");
    feed(Channels.VEHICLE_SPEED, "01.0D");
    feed(Channels.ENGINE_LOAD, "01.04");
    feed(Channels.ACCELERATOR_PEDAL, "01.49", "01.5A");
    feed(Channels.DEMANDED_TORQUE, "01.61");
    feed(Channels.DELIVERED_TORQUE, "01.62");
    feed(Channels.REFERENCE_TORQUE, "01.63");
    feed(Channels.FUEL_RATE, "01.5E");
    feed(Channels.GEAR, "01.A4.1");
    feed(Channels.MODULE_VOLTAGE, "01.42");
  }

  private static String keyOf(VehicleSignal signal) {
    return "22.%04X.%d".formatted(signal.identifier(), signal.firstBit());
  }

  /** A signal's value in the unit of its channel; a vehicle's own signal may be in another. */
  double inChannelUnit(String signalKey, double value) {
    UnitConversion conversion = conversions.get(signalKey);
    return conversion == null ? value : conversion.apply(value);
  }

  /** Later calls for the same channel add sources of lower rank. */
  private void feed(Channel channel, String... keys) {
    signalsByChannel
        .computeIfAbsent(channel, each -> new ArrayList<>())
        .addAll(Arrays.asList(keys));
    for (String key : keys) {
      channelsBySignal.computeIfAbsent(key, each -> new ArrayList<>()).add(channel);
    }
  }

  /** A sensor that is known to sit in one place does not feed another that it only usually has. */
  private void feedPlace(Channel channel, String... keys) {
    feed(channel, Stream.of(keys).filter(key -> !placed.contains(key)).toArray(String[]::new));
  }

  /** Channels that a signal may feed; empty if none wants it. */
  List<Channel> channelsOf(String signalKey) {
    return channelsBySignal.getOrDefault(signalKey, List.of());
  }

  /** Rank of a signal for a channel: 0 is the first choice. */
  int rank(Channel channel, String signalKey) {
    int rank = signalsByChannel.getOrDefault(channel, List.of()).indexOf(signalKey);
    if (rank < 0) {
      throw new IllegalArgumentException(signalKey + " does not feed " + channel.id());
    }
    return rank;
  }

  /** Keys of signals that feed no channel and are only watched, to find out where they sit. */
  List<String> onlyInQuestion() {
    return Medium.allSignals().stream().filter(key -> channelsOf(key).isEmpty()).toList();
  }

  /** Keys of all standard signals that some channel may want, or whose place is in question. */
  List<String> standardSignals() {
    return Stream.concat(
            channelsBySignal.keySet().stream().filter(key -> key.startsWith("01.")),
            Medium.allSignals().stream())
        .distinct()
        .toList();
  }
}
