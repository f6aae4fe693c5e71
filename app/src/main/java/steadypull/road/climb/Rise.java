package steadypull.road.climb;

/**
 * A stretch of a profile that rises.
 *
 * @param from step
 * @param to step, after from
 */
record Rise(int from, int to) {}
