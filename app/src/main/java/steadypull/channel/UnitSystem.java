package steadypull.channel;

/** The units that a person reads. Files and the library are always metric. */
public enum UnitSystem {
  METRIC,
  IMPERIAL
}
