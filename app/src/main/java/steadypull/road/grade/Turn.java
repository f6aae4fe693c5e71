package steadypull.road.grade;

/**
 * A turn back, as a receiver shows it. Immutable.
 *
 * @param seconds when it was driven, since the trip began
 * @param isOnTheSpot whether the vehicle drives back the way it came: what rose falls now. In a
 *     hairpin, or where a turn takes more room, nobody knows
 */
public record Turn(double seconds, boolean isOnTheSpot) {}
