/**
 * Decides which request comes next: due times by class, packing of several parameters into one
 * request, pace and freshness. Knows no bytes and no clock; the time is handed in.
 */
@NullMarked
package steadypull.adapter.polling;

import org.jspecify.annotations.NullMarked;
