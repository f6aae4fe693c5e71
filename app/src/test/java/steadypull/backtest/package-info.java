/** The advice of whole drives through invented worlds, held against what came. */
@NullMarked
package steadypull.backtest;

import org.jspecify.annotations.NullMarked;
