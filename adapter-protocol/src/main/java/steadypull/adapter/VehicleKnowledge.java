package steadypull.adapter;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import steadypull.adapter.frame.MessageFormat;

/**
 * What was learnt about the vehicle at the other end: protocol, control units, identification.
 * Reader thread only.
 */
final class VehicleKnowledge {
  /**
   * Parameters of one control unit: every bit of damage is one. Estimated; makes differ in more.
   */
  private static final int MOST_DAMAGED_BITS = 2;

  /** Estimated: two vehicles of one make with other engines differ in two places at least. */
  private static final int MOST_DAMAGED_CHARACTERS = 1;

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
   * Whether an earlier vehicle is this one, as far as an answer that was lost or damaged while it
   * was found anew lets tell. If so, takes over what was learnt from it: nothing that it answered
   * before is lost, and what it seems to support by mistake is asked for in vain, which rests by
   * plan.
   */
  boolean recognises(VehicleKnowledge earlier) {
    boolean isSame = isOverTheProtocolOf(earlier) && isTheVehicle(earlier);
    if (isSame) {
      takeOver(earlier);
    }
    return isSame;
  }

  private boolean isOverTheProtocolOf(VehicleKnowledge earlier) {
    return format == earlier.format
        && (protocolNumber.isEmpty()
            || earlier.protocolNumber.isEmpty()
            || protocolNumber.equals(earlier.protocolNumber));
  }

  /**
   * The vehicle's own number tells best. Where it is not told, the maps have to agree but for what
   * damage does; beside another number they have to be equal, which is a damaged number, or a
   * sister that is learnt alike.
   */
  private boolean isTheVehicle(VehicleKnowledge earlier) {
    if (vin.isEmpty() || earlier.vin.isEmpty()) {
      return hasNearlyTheMapsOf(earlier);
    }
    return hasNearlyTheNumberOf(earlier) || hasTheMapsOf(earlier);
  }

  private boolean hasNearlyTheNumberOf(VehicleKnowledge earlier) {
    return vin.length() == earlier.vin.length()
        && IntStream.range(0, vin.length())
                .filter(place -> vin.charAt(place) != earlier.vin.charAt(place))
                .count()
            <= MOST_DAMAGED_CHARACTERS;
  }

  /** At least one control unit that both have, and hardly a contradiction in any of those. */
  private boolean hasNearlyTheMapsOf(VehicleKnowledge earlier) {
    Set<String> common = new TreeSet<>(units.keySet());
    common.retainAll(earlier.units.keySet());
    return !common.isEmpty()
        && common.stream()
            .allMatch(address -> differencesOf(address, earlier) <= MOST_DAMAGED_BITS);
  }

  private int differencesOf(String address, VehicleKnowledge earlier) {
    return unit(address).support().differencesFrom(earlier.unit(address).support());
  }

  private boolean hasTheMapsOf(VehicleKnowledge earlier) {
    return units.keySet().equals(earlier.units.keySet())
        && units.keySet().stream()
            .allMatch(address -> unit(address).support().equals(earlier.unit(address).support()));
  }

  private void takeOver(VehicleKnowledge earlier) {
    Map<String, ControlUnit> told = Map.copyOf(units);
    units.clear();
    units.putAll(earlier.units);
    told.forEach(
        (address, anew) ->
            unit(address)
                .learnAnew(anew.support(), number -> earlier.isAnsweredBesides(address, number)));
    signals.addAll(earlier.signals);
    vin = vin.isEmpty() ? earlier.vin : vin;
  }

  private boolean isAnsweredBesides(String address, int parameter) {
    return units.entrySet().stream()
        .anyMatch(unit -> !unit.getKey().equals(address) && unit.getValue().hasAnswered(parameter));
  }
}
