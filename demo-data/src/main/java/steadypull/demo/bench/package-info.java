/**
 * A bench adapter: an AT-command adapter with simulated control units behind it that answers bytes
 * over memory, TCP or a pseudo terminal, on a clock that may run faster than the day.
 */
@NullMarked
package steadypull.demo.bench;

import org.jspecify.annotations.NullMarked;
