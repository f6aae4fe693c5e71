/**
 * The live drive: readings become samples, samples are stored, forecast and judged on one pipeline
 * thread, and the screen gets immutable snapshots. Replaying a recorded trip runs the same pipeline
 * on the trip's own clock. The only room that knows the adapter.
 */
@NullMarked
package steadypull.drive;

import org.jspecify.annotations.NullMarked;
