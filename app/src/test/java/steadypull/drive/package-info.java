@NullMarked
package steadypull.drive;

import org.jspecify.annotations.NullMarked;
