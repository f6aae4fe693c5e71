/**
 * The invented world as the program sees it: names of scenarios, the vehicle file that goes with
 * each, and links to them. {@link steadypull.demo.DemoWorld} is the door.
 */
@NullMarked
package steadypull.demo;

import org.jspecify.annotations.NullMarked;
