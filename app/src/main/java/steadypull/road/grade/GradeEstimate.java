package steadypull.road.grade;

/**
 * The grade at a moment. Immutable.
 *
 * @param seconds since the trip began
 * @param metres driven since the filter began, or since the trip began where a whole trip was
 *     smoothed
 * @param grade rise over run in the direction of travel, a fraction
 * @param error its standard deviation, a fraction, above 0
 * @param heightMetres of the road: altitude where a receiver told any, else above the first point
 */
public record GradeEstimate(
    double seconds, double metres, double grade, double error, double heightMetres) {}
