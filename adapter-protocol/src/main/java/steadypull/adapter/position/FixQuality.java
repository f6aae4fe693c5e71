package steadypull.adapter.position;

/** How well a position is known, the worst first. */
public enum FixQuality {
  /** Not known: too few satellites, or the value was typed in or simulated. */
  NONE,
  /** Carried on from the last one without satellites (dead reckoning). */
  ESTIMATED,
  /** Measured. */
  STANDARD,
  /** Measured, with corrections of a reference station. */
  DIFFERENTIAL,
  /** Measured by carrier phase or by the precise service. */
  PRECISE;

  /** Whether satellites were seen for it. */
  public boolean isMeasured() {
    return compareTo(ESTIMATED) > 0;
  }

  FixQuality worse(FixQuality other) {
    return compareTo(other) < 0 ? this : other;
  }
}
