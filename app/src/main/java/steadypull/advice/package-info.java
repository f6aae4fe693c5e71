/**
 * Rules over forecast, state and link, the life cycle of an advisory, and the words that tell the
 * driver what to do. A reducer without screen or clock: situations in, events and the advice line
 * out.
 */
@NullMarked
package steadypull.advice;

import org.jspecify.annotations.NullMarked;
