/**
 * Small physical models of what heats and cools a towing vehicle, learnt while driving, and the
 * forecast that follows from them: samples in, temperatures with bands out. Deterministic; time
 * comes with the samples; one thread.
 */
@NullMarked
package steadypull.thermal;

import org.jspecify.annotations.NullMarked;
