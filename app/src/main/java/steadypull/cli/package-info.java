/**
 * The commands. Results go to standard output, diagnostics to standard error; exit status 0 done, 1
 * failed with a reason, 2 wrong usage.
 */
@NullMarked
package steadypull.cli;

import org.jspecify.annotations.NullMarked;
