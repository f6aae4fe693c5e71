package steadypull.ui;

import steadypull.drive.RoadState;

/**
 * The road strip, ready to show.
 *
 * @param timeMicros microseconds since trip start: where Now stands
 * @param state what is drawn
 * @param speed digits
 * @param speedUnit unit
 * @param grade digits
 * @param power digits
 * @param powerUnit unit
 * @param gear digits
 * @param outside digits
 * @param outsideUnit unit
 * @param gradeAhead label of the dotted line; empty if the grade is not known
 * @param ahead what is assumed about the road ahead
 * @param spoken all of it for a screen reader
 */
record RoadFace(
    long timeMicros,
    RoadState state,
    String speed,
    String speedUnit,
    String grade,
    String power,
    String powerUnit,
    String gear,
    String outside,
    String outsideUnit,
    String gradeAhead,
    String ahead,
    String spoken) {
  /** Stands where a quantity could not be told. */
  static final String UNKNOWN = "–";
}
