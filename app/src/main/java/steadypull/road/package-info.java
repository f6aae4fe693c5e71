/**
 * Grade and road load: forces on a rig from mass, drag, rolling and grade, and the grade back from
 * the torque balance. Pure physics with its sources; no storage.
 */
@NullMarked
package steadypull.road;

import org.jspecify.annotations.NullMarked;
