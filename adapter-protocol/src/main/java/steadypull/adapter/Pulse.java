package steadypull.adapter;

/** Called again and again while something takes its time. */
@FunctionalInterface
interface Pulse {
  /** Gives a sign of life where one is due; returns whether to go on. */
  boolean goesOn();
}
