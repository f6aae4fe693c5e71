package steadypull.drive;

/** How hard the vehicle is asked. */
public enum Pace {
  /** Keeps the load on the vehicle's bus low; the default. */
  POLITE,
  /** As fast as the link allows. */
  FULL
}
