package steadypull.thermal;

import java.util.OptionalDouble;

/**
 * When a channel meets its limit.
 *
 * @param limitCelsius the limit, degC
 * @param probability180 probability that it is reached within 180 s, 0 to 1
 * @param probability600 probability that it is reached within 600 s, 0 to 1
 * @param seconds median time to the limit; empty if that quantile is "never" (within 600 s)
 * @param secondsP10 10 % quantile of the time, likewise
 * @param secondsP25 25 % quantile
 * @param secondsP75 75 % quantile
 * @param secondsP90 90 % quantile
 */
public record LimitForecast(
    double limitCelsius,
    double probability180,
    double probability600,
    OptionalDouble seconds,
    OptionalDouble secondsP10,
    OptionalDouble secondsP25,
    OptionalDouble secondsP75,
    OptionalDouble secondsP90) {}
