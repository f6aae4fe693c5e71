package steadypull.vehicle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import steadypull.channel.Channel;

/**
 * A vehicle as the workshop knows it. Immutable; changes give a new value.
 *
 * @param name the owner's name for it; not blank
 * @param layout how the charge air is cooled
 * @param limits by channel id, in the order in which they are shown
 * @param rig what it moves
 * @param driveline gears and axle
 * @param speeds speeds that advice may name
 * @param sources sensor roles that differ from the usual ones
 * @param signals the vehicle's own signals
 * @param configurations how it is and was fitted and what was learnt then, in the order in which
 *     they began; empty: as it came, and nothing was learnt
 * @param cap of the cooling system
 */
public record Vehicle(
    String name,
    CoolingLayout layout,
    Map<String, Limit> limits,
    Rig rig,
    Driveline driveline,
    SpeedRange speeds,
    List<SignalSource> sources,
    List<VehicleSignal> signals,
    List<Configuration> configurations,
    PressureCap cap) {
  public Vehicle {
    Objects.requireNonNull(cap);
    Objects.requireNonNull(layout);
    Objects.requireNonNull(rig);
    Objects.requireNonNull(driveline);
    Objects.requireNonNull(speeds);
    if (name.isBlank()) {
      throw new IllegalArgumentException("A vehicle has a name, found blank text");
    }
    limits = Collections.unmodifiableMap(new LinkedHashMap<>(limits));
    limits.forEach(Vehicle::requireOwnKey);
    sources = List.copyOf(sources);
    signals = List.copyOf(signals);
    configurations = List.copyOf(configurations);
    requireOrder(configurations);
  }

  /** A vehicle as it came, with the usual cap, of which no trip has taught anything. */
  public Vehicle(
      String name,
      CoolingLayout layout,
      Map<String, Limit> limits,
      Rig rig,
      Driveline driveline,
      SpeedRange speeds,
      List<SignalSource> sources,
      List<VehicleSignal> signals) {
    this(
        name,
        layout,
        limits,
        rig,
        driveline,
        speeds,
        sources,
        signals,
        List.of(),
        PressureCap.USUAL);
  }

  /** The limit of a channel as it was entered, or empty if the channel has none. */
  public Optional<Limit> limit(Channel channel) {
    return Optional.ofNullable(limits.get(channel.id()));
  }

  /**
   * The limit of a channel that counts, or empty if the channel has none: engine coolant must also
   * stay clear of boiling.
   *
   * @param kilopascals of the air outside, 20 to 120
   */
  public Optional<Limit> limit(Channel channel, double kilopascals) {
    return limit(channel).map(entered -> cap.lower(entered, kilopascals));
  }

  /** A vehicle of which only the cooling layout is known: cautious default limits. */
  public static Vehicle unknown(String name, CoolingLayout layout) {
    return new Vehicle(
        name,
        layout,
        DefaultLimits.of(layout),
        Rig.unknown(),
        Driveline.unknown(),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }

  /** The same vehicle under another name. */
  public Vehicle withName(String other) {
    return new Vehicle(
        other, layout, limits, rig, driveline, speeds, sources, signals, configurations, cap);
  }

  /** The same vehicle with one limit set; a limit of that channel keeps its place. */
  public Vehicle withLimit(Limit limit) {
    return withLimits(changed -> changed.put(limit.channel().id(), limit));
  }

  /** The same vehicle without a limit of that channel. */
  public Vehicle withoutLimit(Channel channel) {
    return withLimits(changed -> changed.remove(channel.id()));
  }

  /**
   * The same vehicle with another cooling layout. Default limits become those of the new layout;
   * limits that somebody has set stay.
   */
  public Vehicle withLayout(CoolingLayout other) {
    Map<String, Limit> changed = new LinkedHashMap<>(DefaultLimits.of(other));
    limits.values().stream()
        .filter(limit -> limit.provenance().kind() != Provenance.Kind.DEFAULT)
        .forEach(limit -> changed.put(limit.channel().id(), limit));
    return new Vehicle(
        name, other, changed, rig, driveline, speeds, sources, signals, configurations, cap);
  }

  /** The same vehicle moving another rig. */
  public Vehicle withRig(Rig other) {
    return new Vehicle(
        name, layout, limits, other, driveline, speeds, sources, signals, configurations, cap);
  }

  /** The same vehicle with another driveline. */
  public Vehicle withDriveline(Driveline other) {
    return new Vehicle(
        name, layout, limits, rig, other, speeds, sources, signals, configurations, cap);
  }

  /** The same vehicle with other advisable speeds. */
  public Vehicle withSpeeds(SpeedRange other) {
    return new Vehicle(
        name, layout, limits, rig, driveline, other, sources, signals, configurations, cap);
  }

  /** The same vehicle with other sensor roles. */
  public Vehicle withSources(List<SignalSource> others) {
    return new Vehicle(
        name, layout, limits, rig, driveline, speeds, others, signals, configurations, cap);
  }

  /** The same vehicle with one sensor's role set; another role of that channel goes. */
  public Vehicle withSource(SignalSource source) {
    List<SignalSource> changed = new ArrayList<>(withoutSource(source.channelId()).sources());
    changed.add(source);
    return withSources(changed);
  }

  /** The same vehicle with the usual source for that channel. */
  public Vehicle withoutSource(String channelId) {
    return withSources(
        sources.stream().filter(each -> !each.channelId().equals(channelId)).toList());
  }

  /** The signal that somebody has said feeds a channel; empty if the usual source is assumed. */
  public Optional<SignalSource> source(Channel channel) {
    return sources.stream().filter(each -> each.channelId().equals(channel.id())).findFirst();
  }

  /** The same vehicle with another cap on its cooling system. */
  public Vehicle withCap(PressureCap other) {
    return new Vehicle(
        name, layout, limits, rig, driveline, speeds, sources, signals, configurations, other);
  }

  /** The same vehicle with other signals of its own. */
  public Vehicle withSignals(List<VehicleSignal> others) {
    return new Vehicle(
        name, layout, limits, rig, driveline, speeds, sources, others, configurations, cap);
  }

  /** How it is fitted now. */
  public Configuration configuration() {
    return configurations.isEmpty() ? Configuration.FIRST : configurations.getLast();
  }

  /** What is known of its heat as it is fitted now. */
  public LearntHeat learnt() {
    return configuration().learnt();
  }

  /** The same vehicle, fitted otherwise now or earlier. */
  public Vehicle withConfigurations(List<Configuration> others) {
    return new Vehicle(name, layout, limits, rig, driveline, speeds, sources, signals, others, cap);
  }

  private static void requireOrder(List<Configuration> configurations) {
    for (int i = 1; i < configurations.size(); i++) {
      if (!configurations.get(i).since().isAfter(configurations.get(i - 1).since())) {
        throw new IllegalArgumentException(
            "Configurations stand in the order in which they began, found %s after %s"
                .formatted(configurations.get(i).since(), configurations.get(i - 1).since()));
      }
    }
  }

  private Vehicle withLimits(Consumer<Map<String, Limit>> change) {
    Map<String, Limit> changed = new LinkedHashMap<>(limits);
    change.accept(changed);
    return new Vehicle(
        name, layout, changed, rig, driveline, speeds, sources, signals, configurations, cap);
  }

  private static void requireOwnKey(String id, Limit limit) {
    if (!limit.channel().id().equals(id)) {
      throw new IllegalArgumentException(
          "A limit stands under the id of its channel %s, found %s"
              .formatted(limit.channel().id(), id));
    }
  }
}
