package steadypull.vehicle;

import java.util.List;

/**
 * What one trip has taught of its vehicle's heat, by itself. Immutable.
 *
 * @param loadedHours hours under load; 0 or more
 * @param told a quantity each, none twice; empty if the trip told too little
 * @param derates every derate that began, in order
 */
public record TripHeat(double loadedHours, List<HeatTold> told, List<DerateBegun> derates) {
  /** A trip that taught nothing. */
  public static final TripHeat NOTHING = new TripHeat(0, List.of(), List.of());

  public TripHeat {
    told = List.copyOf(told);
    derates = List.copyOf(derates);
    if (!(loadedHours >= 0 && loadedHours < 1e5)) {
      throw new IllegalArgumentException("Hours under load are 0 or more, found " + loadedHours);
    }
    if (told.stream().map(each -> each.quantity().id()).distinct().count() < told.size()) {
      throw new IllegalArgumentException("A trip tells each quantity once");
    }
  }

  /** The same with derates. */
  public TripHeat withDerates(List<DerateBegun> begun) {
    return new TripHeat(loadedHours, told, begun);
  }
}
