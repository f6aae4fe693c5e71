/**
 * Segments and headers: ISO 15765-2 single, first, consecutive and flow-control frames, and the
 * headers of CAN and K-line messages. Pure functions and reassembly buffers without input or
 * output.
 */
@NullMarked
package steadypull.adapter.frame;

import org.jspecify.annotations.NullMarked;
