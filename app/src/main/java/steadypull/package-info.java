/**
 * The program itself: decides between window and command, and is the only place that knows the
 * built-in demo world, which it hands to the live drive as one more kind of link.
 */
@NullMarked
package steadypull;

import org.jspecify.annotations.NullMarked;
