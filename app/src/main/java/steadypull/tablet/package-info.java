/**
 * What the tablet's own life means for a recording: it is kept awake, its battery and charger are
 * watched, and its clock is compared with the time that really passes. Knows this machine and
 * nothing of vehicles or trips. {@link steadypull.tablet.Tablet} is what is asked, {@link
 * steadypull.tablet.TabletWatch} turns it into news; both on one thread that may wait.
 */
@NullMarked
package steadypull.tablet;

import org.jspecify.annotations.NullMarked;
