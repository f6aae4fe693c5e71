/** Stories of advice: situations in, events and lines out. */
@NullMarked
package steadypull.advice;

import org.jspecify.annotations.NullMarked;
