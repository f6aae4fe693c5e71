package steadypull.store;

/**
 * A trip from which roads were learned. Immutable.
 *
 * @param tripId its id in this library
 * @param passes how many unbroken drives along roads were learned; 0 if it told no positions, or
 *     none outside of quiet places
 */
public record LearnedTrip(String tripId, int passes) {}
