/**
 * How fast is the reader, and how fast could it be? Drives a reader against a vehicle whose link
 * has exact times, and sets what it reads against the best programme of requests for the same link
 * and against a loop that asks for one parameter after another. Virtual time, one thread; only the
 * benchmark looks at the machine's processor and memory.
 */
@NullMarked
package steadypull.demo.pace;

import org.jspecify.annotations.NullMarked;
