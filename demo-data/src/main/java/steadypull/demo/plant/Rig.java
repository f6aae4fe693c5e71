package steadypull.demo.plant;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Everything that makes one towing vehicle different from the next. Immutable.
 *
 * @param cooling how the charge air is cooled
 * @param gearRatios engine turns per output-shaft turn, first gear first, falling, at least two
 * @param traits every trait with its value
 */
public record Rig(Cooling cooling, List<Double> gearRatios, Map<RigTrait, Double> traits) {
  private static final List<Double> SEVEN_GEARS = List.of(4.2, 2.6, 1.8, 1.35, 1.0, 0.8, 0.65);

  /** What takes the heat out of the charge air. */
  public enum Cooling {
    /** The outside air itself. */
    AIR_TO_AIR,
    /** A water circuit with a radiator of its own. */
    WATER_TO_AIR
  }

  public Rig {
    Objects.requireNonNull(cooling);
    gearRatios = List.copyOf(gearRatios);
    if (gearRatios.size() < 2) {
      throw new IllegalArgumentException("A rig has two gears or more, found " + gearRatios);
    }
    for (RigTrait trait : RigTrait.values()) {
      requireLegal(trait, traits.getOrDefault(trait, Double.NaN));
    }
    traits = Collections.unmodifiableMap(new EnumMap<>(traits));
  }

  /** A heavy diesel with a water-cooled charge cooler and a trailer behind it. */
  public static Rig usual() {
    Map<RigTrait, Double> traits = new EnumMap<>(RigTrait.class);
    for (RigTrait trait : RigTrait.values()) {
      traits.put(trait, trait.usual());
    }
    return new Rig(Cooling.WATER_TO_AIR, SEVEN_GEARS, traits);
  }

  /** The same rig with one trait changed. */
  public Rig with(RigTrait trait, double value) {
    Map<RigTrait, Double> changed = new EnumMap<>(traits);
    changed.put(trait, value);
    return new Rig(cooling, gearRatios, changed);
  }

  /** The same rig with its charge air cooled in another way. */
  public Rig cooledBy(Cooling other) {
    return new Rig(other, gearRatios, traits);
  }

  /** The value of a trait, in the unit that its name ends with. */
  public double of(RigTrait trait) {
    return Objects.requireNonNull(traits.get(trait));
  }

  private static void requireLegal(RigTrait trait, double value) {
    if (!(value >= trait.lowest() && value <= trait.highest())) {
      throw new IllegalArgumentException(
          "%s lies between %s and %s, found %s"
              .formatted(trait, trait.lowest(), trait.highest(), value));
    }
  }
}
