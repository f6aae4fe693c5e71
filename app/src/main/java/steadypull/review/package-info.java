/**
 * What a finished trip says: its climbs, each with what it asked of the vehicle; and how well
 * warnings foretold what came on it. A stored trip goes in, figures come out. Nothing is stored
 * here; the library's thread.
 */
@NullMarked
package steadypull.review;

import org.jspecify.annotations.NullMarked;
