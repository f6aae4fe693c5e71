package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** All faults of a bench. Quick to ask for thousands of them. Immutable. */
final class FaultPlan {
  private static final NavigableMap<Double, Fault> NONE = new TreeMap<>();

  private final Map<Fault.Kind, NavigableMap<Double, Fault>> byKind =
      new EnumMap<>(Fault.Kind.class);

  /**
   * Takes faults in any order.
   *
   * @throws IllegalArgumentException if two of one kind overlap
   */
  FaultPlan(List<Fault> faults) {
    List<Fault> sorted = new ArrayList<>(faults);
    sorted.sort(Comparator.comparingDouble(Fault::fromSeconds));
    for (Fault fault : sorted) {
      NavigableMap<Double, Fault> same = byKind.computeIfAbsent(fault.kind(), _ -> new TreeMap<>());
      if (!same.isEmpty() && same.lastEntry().getValue().untilSeconds() > fault.fromSeconds()) {
        throw new IllegalArgumentException(
            "Two faults %s overlap at %s s".formatted(fault.kind().word(), fault.fromSeconds()));
      }
      same.put(fault.fromSeconds(), fault);
    }
  }

  boolean has(Fault.Kind kind, double seconds) {
    return at(kind, seconds).isPresent();
  }

  /** The fault of a kind that is on at a time. */
  Optional<Fault> at(Fault.Kind kind, double seconds) {
    Map.Entry<Double, Fault> latest = of(kind).floorEntry(seconds);
    return latest == null
        ? Optional.empty()
        : Optional.of(latest.getValue()).filter(fault -> fault.isOn(seconds));
  }

  /** The next fault of a kind that begins later than a time. */
  Optional<Fault> after(Fault.Kind kind, double seconds) {
    Map.Entry<Double, Fault> next = of(kind).higherEntry(seconds);
    return next == null ? Optional.empty() : Optional.of(next.getValue());
  }

  private NavigableMap<Double, Fault> of(Fault.Kind kind) {
    return byKind.getOrDefault(kind, NONE);
  }
}
