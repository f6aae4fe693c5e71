/**
 * Opens and moves bytes: serial ports and TCP, and whatever another {@link
 * steadypull.adapter.link.LinkProvider} brings. The only package of this module that opens
 * anything. A link is used by one thread at a time and carries its own clock, so that a simulated
 * vehicle can run faster than the day.
 */
@NullMarked
package steadypull.adapter.link;

import org.jspecify.annotations.NullMarked;
