package steadypull.adapter;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import steadypull.adapter.frame.MessageFormat;

/**
 * What was learnt about the vehicle at the other end: protocol, control units, identification.
 * Reader thread only.
 */
final class VehicleKnowledge {
  private final MessageFormat format;
  private final String protocolNumber;
  private final String protocol;
  private final TreeMap<String, ControlUnit> units = new TreeMap<>();
  private final Set<String> signals = new LinkedHashSet<>();
  private String vin = "";

  VehicleKnowledge(MessageFormat format, String protocolNumber, String protocol) {
    this.format = Objects.requireNonNull(format);
    this.protocolNumber = protocolNumber;
    this.protocol = protocol;
  }

  MessageFormat format() {
    return format;
  }

  /** One hex digit, or empty text if the adapter did not tell. */
  String protocolNumber() {
    return protocolNumber;
  }

  String protocol() {
    return protocol;
  }

  String vin() {
    return vin;
  }

  void learnVin(String number) {
    vin = number;
  }

  /** Keys of the signals that the vehicle was found to offer. */
  Set<String> signals() {
    return signals;
  }

  Map<String, ControlUnit> units() {
    return units;
  }

  ControlUnit unit(String address) {
    return units.computeIfAbsent(address, a -> new ControlUnit());
  }

  Optional<ControlUnit> findUnit(String address) {
    return Optional.ofNullable(units.get(address));
  }

  /**
   * The unit to be believed for a parameter: of those that support it the one with the lowest
   * address, which is the engine's (ISO 15765-4: 7E8, or 10 in 29-bit identifiers).
   */
  Optional<String> unitFor(int parameter) {
    return units.entrySet().stream()
        .filter(entry -> entry.getValue().support().supports(parameter))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Whether no other control unit than one answers to a parameter. */
  boolean isOnlyFrom(String unit, int parameter) {
    return units.entrySet().stream()
        .allMatch(
            entry ->
                entry.getKey().equals(unit) || !entry.getValue().support().supports(parameter));
  }

  /** Some parameter that a control unit supports, or empty if none supports any. */
  OptionalInt anyParameter() {
    return units.values().stream().flatMapToInt(unit -> unit.support().parameters()).findFirst();
  }

  /** Addresses of all units that support a parameter, rising. */
  Set<String> unitsThatSupport(int parameter) {
    Set<String> addresses = new TreeSet<>(units.keySet());
    addresses.removeIf(address -> !unit(address).support().supports(parameter));
    return addresses;
  }

  boolean isSupported(int parameter) {
    return unitFor(parameter).isPresent();
  }

  /**
   * Whether an earlier vehicle is this one by protocol and support maps; if so, takes over what was
   * learnt from it.
   */
  boolean recognises(VehicleKnowledge earlier) {
    boolean isSame =
        format == earlier.format
            && units.keySet().equals(earlier.units.keySet())
            && units.keySet().stream().allMatch(address -> hasSameSupport(address, earlier));
    if (isSame) {
      units.putAll(earlier.units);
      signals.addAll(earlier.signals);
      vin = vin.isEmpty() ? earlier.vin : vin;
    }
    return isSame;
  }

  private boolean hasSameSupport(String address, VehicleKnowledge earlier) {
    return unit(address).support().equals(earlier.unit(address).support());
  }
}
