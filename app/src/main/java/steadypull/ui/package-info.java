/**
 * The screens. Views build nodes and draw; what they show arrives as immutable snapshots. FX thread
 * only unless a class says otherwise.
 */
@NullMarked
package steadypull.ui;

import org.jspecify.annotations.NullMarked;
