package steadypull.drive;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.vehicle.Limit;

/**
 * One thermal channel as the screen shows it. Immutable.
 *
 * @param channel the channel
 * @param limit its limit with provenance, if it has one
 * @param latestCelsius last value heard, if any
 * @param secondsSinceHeard age of that value; 0 if fresh; infinite if never heard
 * @param degreesPerMinute recent trend from the model, if known
 * @param trace the last 180 s, oldest first
 * @param forecast what comes
 * @param eased the fan if the advice is followed; only on the leading strip
 * @param level how near it is
 * @param powerCutPercent percentage points of torque that are being cut because of it; empty unless
 *     derated
 */
public record StripState(
    Channel channel,
    Optional<Limit> limit,
    OptionalDouble latestCelsius,
    double secondsSinceHeard,
    OptionalDouble degreesPerMinute,
    Trace trace,
    ChannelForecast forecast,
    Optional<Fan> eased,
    StripLevel level,
    OptionalDouble powerCutPercent) {

  /** How near a strip is to its limit; each level has its own glyph. */
  public enum StripLevel {
    HOLDS,
    MAY_REACH,
    ADVISE,
    ACT_NOW,
    DERATED,
    NO_DATA,
    LEARNING
  }
}
