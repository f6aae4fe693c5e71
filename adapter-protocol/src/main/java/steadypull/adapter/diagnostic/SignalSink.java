package steadypull.adapter.diagnostic;

/** Takes decoded values one by one, on the thread that decodes. */
@FunctionalInterface
public interface SignalSink {

  /**
   * Takes one value.
   *
   * @param signal what it is a value of
   * @param value in the signal's unit, finite
   */
  void value(Signal signal, double value);
}
