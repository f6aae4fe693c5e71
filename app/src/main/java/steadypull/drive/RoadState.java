package steadypull.drive;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.road.RoadAhead;

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
 * @param ahead what is known of the road ahead
 * @param climb the climb that the vehicle is on or comes to next, as far as the road is known
 */
public record RoadState(
    OptionalDouble speedKilometresPerHour,
    OptionalDouble gradePercent,
    OptionalDouble wheelPowerKilowatts,
    OptionalDouble gear,
    OptionalDouble ambientCelsius,
    Trace behind,
    RoadAhead ahead,
    Optional<ClimbAhead> climb) {}
