/**
 * Before and after: runs under load taken from trips, brought to common conditions by the
 * identified model, and what a change of the cooling did, with intervals and a verdict.
 */
@NullMarked
package steadypull.compare;

import org.jspecify.annotations.NullMarked;
