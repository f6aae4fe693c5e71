package steadypull.thermal;

import steadypull.vehicle.TroubleCodes;

/**
 * What the stored trouble codes explain. At a hot channel only a fault that came up during this
 * drive is believed: codes stay stored for weeks after the fault has gone. Immutable.
 */
record PowerFaults(TroubleCodes codes) {

  /** Whether a code is stored for which a control unit limits power, or may. */
  boolean mayExplain() {
    return codes.stored().stream()
        .map(code -> CodeCause.of(code.text()))
        .anyMatch(cause -> cause == CodeCause.FAULT || cause == CodeCause.MAKERS);
  }

  /** Whether one came up during this drive for which control units limit power. */
  boolean explainEvenAtHeat() {
    return codes.stored().stream()
        .filter(code -> code.cameUpMicros().isPresent())
        .anyMatch(code -> CodeCause.of(code.text()) == CodeCause.FAULT);
  }
}
