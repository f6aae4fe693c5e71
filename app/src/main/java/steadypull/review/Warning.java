package steadypull.review;

import steadypull.channel.Channel;

/**
 * A warning that a temperature will reach its limit: what it was about, and from when to when it
 * stood.
 *
 * @param channel that it spoke of when it was raised
 * @param limitCelsius of that channel then
 * @param fromSecond of the trip at which it was raised
 * @param untilSecond at which it was taken back; after the drive's end if it never was
 */
public record Warning(Channel channel, double limitCelsius, int fromSecond, int untilSecond) {}
