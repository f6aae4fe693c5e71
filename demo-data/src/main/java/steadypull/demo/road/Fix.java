package steadypull.demo.road;

/**
 * Where a receiver believes to be.
 *
 * @param latitudeDegrees in steps of 1e-7
 * @param longitudeDegrees in steps of 1e-7
 * @param altitudeMetres above mean sea level, in steps of 0.1
 */
public record Fix(double latitudeDegrees, double longitudeDegrees, double altitudeMetres) {}
