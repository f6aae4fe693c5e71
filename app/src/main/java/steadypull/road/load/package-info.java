/**
 * What a road asks of a rig, forwards and back: engine torque to wheels, the grade that a load on a
 * dynamometer amounts to, and mass and drag of a rig from a trip it has driven. Samples, grades and
 * loads go in, powers, grades and intervals come out. Pure; one thread unless said otherwise.
 */
@NullMarked
package steadypull.road.load;

import org.jspecify.annotations.NullMarked;
