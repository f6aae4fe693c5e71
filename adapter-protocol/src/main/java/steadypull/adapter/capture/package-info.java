/**
 * Keeps the byte dialogue with an adapter in a file, and replays such a file as a link, so that a
 * stranger's problem can be looked at anywhere. {@link steadypull.adapter.capture.Capture} writes,
 * {@link steadypull.adapter.capture.CaptureLinks} replays; the form of the file stands in
 * DEVELOPERS.md. The vehicle's identification number is masked before anything is written. The
 * port's thread writes; what is replayed goes through the read-only gate like every other link.
 */
@NullMarked
package steadypull.adapter.capture;

import org.jspecify.annotations.NullMarked;
