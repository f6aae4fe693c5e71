package steadypull.adapter;

import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;

/**
 * Takes what a {@link VehicleReader} hears, in the order of arrival, on the reader's thread. Its
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

  /**
   * Takes the trouble codes of one round of asking: at the start, once a minute and at the end. A
   * round that nobody answered is not told.
   *
   * @param report what was answered and found
   * @param nanoTime when, on the link's clock
   */
  default void troubleCodes(TroubleCodeReport report, long nanoTime) {}

  /**
   * Takes what a control unit measured when it stored a code; again after every reconnection.
   *
   * @param frame the code and the values
   * @param nanoTime when, on the link's clock
   */
  default void freezeFrame(FreezeFrame frame, long nanoTime) {}

  /**
   * Takes what a control unit says about itself.
   *
   * @param identity name and calibrations
   * @param nanoTime when, on the link's clock
   */
  default void identified(ControlUnitIdentity identity, long nanoTime) {}
}
