/** Stories that hold the season to its claims, from its samples alone. */
@NullMarked
package steadypull.demo.season;

import org.jspecify.annotations.NullMarked;
