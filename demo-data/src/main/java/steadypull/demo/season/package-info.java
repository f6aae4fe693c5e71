/**
 * The demo library's content: a season of an invented workshop. Several rigs drive the same
 * invented roads again and again and stand on a dynamometer before and after changes; every figure
 * comes out of {@link steadypull.demo.plant}, read the way a polled link delivers it. In goes a
 * seed, out go trips that stream their samples. The entry is {@link steadypull.demo.season.Season};
 * the others here are what it hands out.
 */
@NullMarked
package steadypull.demo.season;

import org.jspecify.annotations.NullMarked;
