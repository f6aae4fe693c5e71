@NullMarked
package steadypull.road.load;

import org.jspecify.annotations.NullMarked;
