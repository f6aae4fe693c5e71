package steadypull.road.load;

/** What a trip tells of its rig. A closed set, immutable. */
public sealed interface RigFinding {

  /**
   * The rig could be weighed.
   *
   * @param massKilograms of vehicle and trailer together
   * @param dragAreaSquareMetres drag coefficient times frontal area; wide, because nobody tells the
   *     wind
   */
  record Weighed(Interval massKilograms, Interval dragAreaSquareMetres) implements RigFinding {}

  /** The trip does not tell. */
  record CannotTell(Reason reason) implements RigFinding {}

  /** Why a trip does not tell. A closed set. */
  enum Reason {
    /** Torque, engine speed or reference torque are missing: nobody knows what pulled. */
    NO_TORQUE,
    /** No receiver told an altitude: nobody knows what was climbed. */
    NO_ALTITUDE,
    /** The wheels turned and the vehicle stayed: a dynamometer has no mass to tell. */
    ON_ROLLERS,
    /** Too little was climbed and accelerated. */
    TOO_LITTLE_CLIMBED,
    /** The trip's samples cannot be read. */
    UNREADABLE,
    /** No mass of 500 to 60000 kg fits: torque or altitude are not what they say. */
    NO_MASS_FITS
  }
}
