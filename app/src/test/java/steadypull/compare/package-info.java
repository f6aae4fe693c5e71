/** Runs of invented plants before and after a change that is known. */
@NullMarked
package steadypull.compare;

import org.jspecify.annotations.NullMarked;
