/**
 * What a finished trip says: its climbs, each with what it asked of the vehicle. A stored trip goes
 * in, figures come out. Nothing is stored here; the library's thread.
 */
@NullMarked
package steadypull.review;

import org.jspecify.annotations.NullMarked;
