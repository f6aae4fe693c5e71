@NullMarked
package steadypull.cli;

import org.jspecify.annotations.NullMarked;
