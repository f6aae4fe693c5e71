/**
 * The text dialogue of an AT-command adapter: command lines out, replies up to the prompt in, the
 * texts that are not data, and what to do about each; and beside it the lines of a serial CAN
 * adapter. No input or output of its own: bytes are handed in and taken out.
 */
@NullMarked
package steadypull.adapter.dialogue;

import org.jspecify.annotations.NullMarked;
