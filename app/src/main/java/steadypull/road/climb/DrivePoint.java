package steadypull.road.climb;

import java.util.Optional;
import steadypull.road.PassPoint;

/**
 * A point of a drive whose short gaps were bridged. Immutable.
 *
 * @param metres from the drive's first point, bridged gaps included
 * @param seconds since the trip began
 * @param tripMetres driven since the trip began, gaps not counted
 * @param height m, continuous over gaps
 * @param place where it is, if that is known
 * @param gapSeconds that nothing was told in before this point, 0 or more
 */
record DrivePoint(
    double metres,
    double seconds,
    double tripMetres,
    double height,
    Optional<PassPoint.Place> place,
    double gapSeconds) {}
