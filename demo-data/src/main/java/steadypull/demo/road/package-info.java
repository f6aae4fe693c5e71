/** Invented roads, weather and drives: grade by distance, outside air, what the driver wants. */
@NullMarked
package steadypull.demo.road;

import org.jspecify.annotations.NullMarked;
