package steadypull.vehicle;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Which circuits a fitting may have changed, by the words in which its owner tells of it. Words
 * that say nothing of a circuit may mean any: then all begin anew, which costs some trips of
 * learning and believes nothing wrong. Stateless.
 */
public final class Fitting {
  /** Beginnings of words; what stands in the same stream of air is changed with it. */
  private static final Map<String, Set<Circuit>> BEGINNINGS =
      Map.ofEntries(
          Map.entry("charge", EnumSet.of(Circuit.CHARGE_AIR)),
          Map.entry("intercool", EnumSet.of(Circuit.CHARGE_AIR)),
          Map.entry("aftercool", EnumSet.of(Circuit.CHARGE_AIR)),
          Map.entry("turbo", EnumSet.of(Circuit.COMPRESSOR)),
          Map.entry("compressor", EnumSet.of(Circuit.COMPRESSOR)),
          Map.entry("intake", EnumSet.of(Circuit.COMPRESSOR)),
          Map.entry("snorkel", EnumSet.of(Circuit.COMPRESSOR)),
          Map.entry("engine", EnumSet.of(Circuit.ENGINE_COOLANT)),
          Map.entry("thermostat", EnumSet.of(Circuit.ENGINE_COOLANT)),
          Map.entry("radiator", EnumSet.of(Circuit.ENGINE_COOLANT, Circuit.GEARBOX)),
          Map.entry("fan", EnumSet.of(Circuit.ENGINE_COOLANT, Circuit.CHARGE_AIR, Circuit.GEARBOX)),
          Map.entry("oil", EnumSet.of(Circuit.ENGINE_OIL)),
          Map.entry("gearbox", EnumSet.of(Circuit.GEARBOX)),
          Map.entry("transmission", EnumSet.of(Circuit.GEARBOX)),
          Map.entry("torque", EnumSet.of(Circuit.GEARBOX)),
          Map.entry("exhaust", EnumSet.of(Circuit.EXHAUST, Circuit.COMPRESSOR)),
          Map.entry("downpipe", EnumSet.of(Circuit.EXHAUST, Circuit.COMPRESSOR)));

  /** A word that names the kind of a cooler; its place is told by another word. */
  private static final List<String> PLACES = List.of("charge", "gearbox", "transmission");

  private Fitting() {}

  /** The circuits that somebody may have changed who says this; all if it does not say. */
  public static Set<Circuit> touched(String words) {
    List<String> told = List.of(words.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    Set<Circuit> touched = EnumSet.noneOf(Circuit.class);
    boolean isPlaced = told.stream().anyMatch(word -> PLACES.stream().anyMatch(word::startsWith));
    for (String word : told) {
      BEGINNINGS.forEach(
          (beginning, circuits) -> {
            boolean isKindOnly =
                isPlaced && (beginning.equals("oil") || beginning.equals("radiator"));
            if (word.startsWith(beginning) && !isKindOnly) {
              touched.addAll(circuits);
            }
          });
    }
    return touched.isEmpty() ? EnumSet.allOf(Circuit.class) : touched;
  }
}
