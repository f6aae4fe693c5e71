package steadypull.demo.bench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What happens to an adapter by itself because of faults, in the order of time. */
final class UnaskedEvents {
  private static final List<Fault.Kind> KINDS =
      List.of(
          Fault.Kind.VANISH,
          Fault.Kind.LV_RESET,
          Fault.Kind.REBOOT,
          Fault.Kind.ACT_ALERT,
          Fault.Kind.LP_ALERT);

  private static final double NANOS = 1e9;

  private final FaultPlan plan;
  private double afterSeconds = -1;

  UnaskedEvents(FaultPlan plan) {
    this.plan = plan;
  }

  /** When the next one is due. */
  OptionalLong nextNanos() {
    return peek()
        .map(fault -> OptionalLong.of((long) (fault.fromSeconds() * NANOS)))
        .orElse(OptionalLong.empty());
  }

  /** Takes the next one that is due by a moment. */
  Optional<Fault> take(long nanos) {
    Optional<Fault> next = peek().filter(fault -> (long) (fault.fromSeconds() * NANOS) <= nanos);
    next.ifPresent(fault -> afterSeconds = fault.fromSeconds());
    return next;
  }

  private Optional<Fault> peek() {
    Optional<Fault> earliest = Optional.empty();
    for (Fault.Kind kind : KINDS) {
      Optional<Fault> next = plan.after(kind, afterSeconds);
      boolean isEarlier =
          next.isPresent()
              && earliest.map(Fault::fromSeconds).orElse(Double.MAX_VALUE)
                  > next.get().fromSeconds();
      earliest = isEarlier ? next : earliest;
    }
    return earliest;
  }
}
