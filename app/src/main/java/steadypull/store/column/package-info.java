/**
 * How the samples of a trip lie in bytes: {@link steadypull.store.column.SegmentBuilder} packs some
 * minutes of driving into a segment and an overview for drawing, {@link
 * steadypull.store.column.Segment} gives every sample back in its order, bit for bit, and {@link
 * steadypull.store.column.TripLines} tells what to draw in each column of pixels. No database, no
 * files: the store keeps the bytes. {@link steadypull.store.column.SegmentFormat} has the layout.
 * Every class is for one thread at a time; drawing has the cores unpack what its thread has read.
 */
@NullMarked
package steadypull.store.column;

import org.jspecify.annotations.NullMarked;
