/**
 * Channels, units and samples: the words that every other room speaks. Values only, immutable, no
 * thread and no clock of its own. Quantities become text in one place, {@link
 * steadypull.channel.QuantityFormat}; foreign units become ours in one place, {@link
 * steadypull.channel.UnitConversion}.
 */
@NullMarked
package steadypull.channel;

import org.jspecify.annotations.NullMarked;
