package steadypull.adapter;

/**
 * Takes what a {@link VehicleReader} hears, in the order of arrival, on the reader's thread. Both
 * methods should return soon; a slow listener slows the polling.
 */
public interface ReaderListener {

  /** Takes one value. */
  void reading(Reading reading);

  /**
   * Takes a change of the link, and, once a second at least while nothing else happens, the present
   * state again as a sign of life.
   *
   * @param state the state from now on
   * @param nanoTime when, on the link's clock
   */
  void linkState(LinkState state, long nanoTime);
}
