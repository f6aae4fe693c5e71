/**
 * The trip library: one SQLite file that holds vehicles, trips, samples and events, durable at
 * least once a second while a trip is recorded. {@link steadypull.store.TripLibrary} is the door;
 * one instance may be used from several threads.
 */
@NullMarked
package steadypull.store;

import org.jspecify.annotations.NullMarked;
