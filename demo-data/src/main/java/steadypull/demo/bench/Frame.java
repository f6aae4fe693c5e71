package steadypull.demo.bench;

/** What one line of an adapter's reply shows: something on the vehicle's bus. A closed set. */
sealed interface Frame permits CanFrame, OlderFrame {

  /** When it was on the bus, on the bench's clock. */
  long nanos();
}
