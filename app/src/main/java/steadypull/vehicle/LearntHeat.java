package steadypull.vehicle;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is known of a vehicle's heat from its trips, as it is fitted. Quantities that this version
 * of the program does not know are kept and used by nobody. Immutable.
 *
 * @param quantities in the order in which they were first told, none twice
 */
public record LearntHeat(List<LearntQuantity> quantities) {
  /** No trip has taught anything. */
  public static final LearntHeat NOTHING = new LearntHeat(List.of());

  public LearntHeat {
    quantities = List.copyOf(quantities);
    long ids = quantities.stream().map(each -> each.quantity().id()).distinct().count();
    if (ids < quantities.size()) {
      throw new IllegalArgumentException("Each quantity is learnt once, found one twice");
    }
  }

  /** What was learnt of a quantity, or empty if no trip told it. */
  public Optional<LearntQuantity> of(String quantityId) {
    return quantities.stream().filter(each -> each.quantity().id().equals(quantityId)).findFirst();
  }

  /** When the last trip that taught something began; long ago if none did. */
  public Instant last() {
    return quantities.stream()
        .map(LearntQuantity::last)
        .max(Comparator.naturalOrder())
        .orElse(Instant.MIN);
  }

  /** With what one more trip has told. */
  public LearntHeat after(TripHeat trip, Instant start) {
    List<LearntQuantity> changed = new ArrayList<>(quantities);
    for (HeatTold told : trip.told()) {
      LearntQuantity before =
          of(told.quantity().id())
              .filter(each -> each.quantity().equals(told.quantity()))
              .orElseGet(() -> LearntQuantity.nothing(told.quantity(), start));
      LearntQuantity after = before.after(told, trip.loadedHours(), start);
      int place = place(changed, told.quantity().id());
      if (place < 0) {
        changed.add(after);
      } else {
        changed.set(place, after);
      }
    }
    return new LearntHeat(changed);
  }

  /** As it is known at a later moment: what nobody has looked at may have moved meanwhile. */
  public LearntHeat asOf(Instant moment) {
    return new LearntHeat(quantities.stream().map(each -> each.asOf(moment)).toList());
  }

  /** After something was fitted: the circuits it touches begin where they stood, open again. */
  public LearntHeat reopened(Set<Circuit> touched) {
    return new LearntHeat(
        quantities.stream()
            .map(each -> touched.contains(each.quantity().circuit()) ? each.reopened() : each)
            .toList());
  }

  private static int place(List<LearntQuantity> quantities, String id) {
    for (int i = 0; i < quantities.size(); i++) {
      if (quantities.get(i).quantity().id().equals(id)) {
        return i;
      }
    }
    return -1;
  }
}
