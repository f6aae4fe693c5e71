/**
 * Climbs: where a road rises long enough to matter, found in the passes of a finished trip, and
 * recognised when they are driven again. Passes and known climbs go in, climbs and their identity
 * come out. Pure, no storage; any thread.
 */
@NullMarked
package steadypull.road.climb;

import org.jspecify.annotations.NullMarked;
