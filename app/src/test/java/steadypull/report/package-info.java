@NullMarked
package steadypull.report;

import org.jspecify.annotations.NullMarked;
