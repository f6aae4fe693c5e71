package steadypull.road.memory;

/**
 * A way from one node to the next. Immutable.
 *
 * @param to the node it leads to, which exists
 * @param count how many passes took it; 0 where only passes the other way tell of it
 */
record RoadLink(long to, int count) {}
