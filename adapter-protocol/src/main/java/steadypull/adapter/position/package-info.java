/**
 * Hears a satellite receiver: NMEA 0183 sentences in, one report for each moment out. {@link
 * steadypull.adapter.position.SatelliteReceiver} is the entry; it works on a thread of its own and
 * calls its listener there. Nothing is ever said to a receiver: its link can only be heard. That
 * there is none, or that it has no fix yet, is normal.
 */
@NullMarked
package steadypull.adapter.position;

import org.jspecify.annotations.NullMarked;
