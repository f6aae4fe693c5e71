package steadypull.drive;

import java.util.OptionalDouble;

/**
 * The road strip's content. Immutable.
 *
 * @param speedKilometresPerHour road speed, if heard lately
 * @param gradePercent grade here, if it can be told
 * @param wheelPowerKilowatts power at the wheels, if it can be told
 * @param gear gear, if it can be told
 * @param ambientCelsius outside temperature, if heard
 * @param behind height of the road over the last 180 s relative to here, metres, oldest first;
 *     times as microseconds since trip start
 */
public record RoadState(
    OptionalDouble speedKilometresPerHour,
    OptionalDouble gradePercent,
    OptionalDouble wheelPowerKilowatts,
    OptionalDouble gear,
    OptionalDouble ambientCelsius,
    Trace behind) {}
