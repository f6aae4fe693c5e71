package steadypull.exchange;

import java.util.OptionalInt;

/**
 * When a held column was polled, in rows.
 *
 * @param period rows from one poll to the next; empty if nobody can tell: then a value is fresh
 *     only when it changes
 * @param phase number of a polled row, modulo the period, counted from 0 at the first row; empty if
 *     polls do not keep to rows: then the last fresh value counts
 */
record Freshness(OptionalInt period, OptionalInt phase) {
  static Freshness unknown() {
    return new Freshness(OptionalInt.empty(), OptionalInt.empty());
  }

  static Freshness every(int period) {
    return new Freshness(OptionalInt.of(period), OptionalInt.empty());
  }

  static Freshness every(int period, int phase) {
    return new Freshness(OptionalInt.of(period), OptionalInt.of(phase));
  }

  /** Whether polls keep to rows. */
  boolean isLocked() {
    return phase.isPresent();
  }

  /** Whether both are polled in the same turn, so that a lost row shifts both. */
  boolean sharesTurn(Freshness other) {
    return isLocked() && other.isLocked() && period.equals(other.period);
  }
}
