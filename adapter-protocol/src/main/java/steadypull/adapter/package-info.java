/**
 * Reads a vehicle over its diagnostic port: addresses go in, time-stamped {@link
 * steadypull.adapter.Reading readings} and {@link steadypull.adapter.LinkState link states} come
 * out. {@link steadypull.adapter.VehicleReader} is the one entry; it runs on the thread that calls
 * it and only ever asks, never clears, writes or actuates.
 */
@NullMarked
package steadypull.adapter;

import org.jspecify.annotations.NullMarked;
