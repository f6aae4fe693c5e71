package steadypull.road.climb;

/** Which climb a drive has found. A closed set; immutable. */
public sealed interface ClimbIdentity {
  /** A climb that is known, from its start to its end. */
  record Known(KnownClimb climb) implements ClimbIdentity {}

  /**
   * A part of a known climb: turned around on it, joined from a side road, or the record broke off.
   *
   * @param climb the whole
   * @param fromMetres where on it the part begins, 0 or more
   * @param toMetres where on it the part ends
   */
  record Part(KnownClimb climb, double fromMetres, double toMetres) implements ClimbIdentity {}

  /** A climb that is not known yet, with the id that it gets. */
  record New(KnownClimb climb) implements ClimbIdentity {}

  /**
   * A part of a climb that nobody knows: the record broke off or the vehicle turned around, so that
   * nobody knows where it would have begun or ended either.
   */
  record Fragment() implements ClimbIdentity {}

  /** No place was told, too few, or none at an end of a climb that nobody knows. */
  record Unplaced() implements ClimbIdentity {}
}
