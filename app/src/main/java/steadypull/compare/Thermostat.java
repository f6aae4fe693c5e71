package steadypull.compare;

/** What the engine's thermostat did under a load. A closed set. */
public enum Thermostat {
  /** Fully open: the coolant's temperature is what the radiator makes it. */
  OPEN,
  /** It holds the temperature; a bigger radiator cannot help meanwhile. */
  REGULATING,
  /** Between the two, or the coolant was not heard. */
  UNKNOWN
}
