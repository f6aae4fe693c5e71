@NullMarked
package steadypull.tablet;

import org.jspecify.annotations.NullMarked;
