/**
 * Memory of roads: what every pass told of a road's grade, by place and direction, without a map.
 * Passes over roads go in, the road ahead of a moving vehicle comes out ({@link
 * steadypull.road.memory.RoadMemory}, {@link steadypull.road.memory.RoadMatcher}); an imported
 * route or a trip's own past answers the same questions ({@link
 * steadypull.road.memory.RouteSight}). Stores nothing itself: tiles of octets come and go through a
 * {@link steadypull.road.memory.TileShelf}. One thread at a time for each memory.
 */
@NullMarked
package steadypull.road.memory;

import org.jspecify.annotations.NullMarked;
