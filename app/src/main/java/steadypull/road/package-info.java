/**
 * Grade and road load: forces on a rig from mass, drag, rolling and grade, and the grade back from
 * the torque balance. A route is a way on the map, with distances along it. Pure physics and
 * geometry with their sources; no storage.
 */
@NullMarked
package steadypull.road;

import org.jspecify.annotations.NullMarked;
