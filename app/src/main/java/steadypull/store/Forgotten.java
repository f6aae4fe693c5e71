package steadypull.store;

/**
 * What was forgotten of roads; the two ways of a road count each for itself. Immutable.
 *
 * @param pieces how many places with a grade
 * @param metres length of the ways between them, about
 * @param climbs how many climbs that were recognised
 */
public record Forgotten(int pieces, double metres, int climbs) {}
