/**
 * The grade of the road from what a vehicle tells: torque, speed and, where there is a receiver,
 * altitude, each with its error, live by a filter and afterwards by a smoother. Samples go in and
 * derived samples or passes over roads come out. Pure; pipeline thread only unless said otherwise.
 */
@NullMarked
package steadypull.road.grade;

import org.jspecify.annotations.NullMarked;
