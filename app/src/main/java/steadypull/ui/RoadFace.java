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
 * @param ground the road ahead
 * @param gradeAhead label of the ground ahead, or of the dotted line where it is not known; empty
 *     if the grade is not known either
 * @param origin from where the ground ahead is known; empty if it is not
 * @param place what lies ahead
 * @param ahead more of it, or what is assumed
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
    GroundAhead ground,
    String gradeAhead,
    String origin,
    String place,
    String ahead,
    String spoken) {
  /** Stands where a quantity could not be told. */
  static final String UNKNOWN = "–";
}
