package steadypull.adapter;

import java.util.function.IntPredicate;
import steadypull.adapter.diagnostic.Maxima;
import steadypull.adapter.diagnostic.SupportMap;
import steadypull.adapter.frame.Octets;
import steadypull.adapter.frame.Payload;

/** What was learnt about one control unit. Reader thread only. */
final class ControlUnit {
  private static final int PARAMETERS = 0x100;

  private SupportMap support = SupportMap.empty();
  private Maxima maxima = Maxima.none();
  private final int[] lengths = new int[PARAMETERS];
  private boolean misfits;

  SupportMap support() {
    return support;
  }

  void learnSupport(int mapParameter, Payload data) {
    support = support.with(mapParameter, data);
  }

  /** Whether it has ever answered a request for this parameter. */
  boolean hasAnswered(int parameter) {
    return lengths[parameter] > 0;
  }

  /**
   * Takes what it told of itself when it was found anew: nothing that it has answered before is
   * lost by that, and nothing believed that others are known to answer in its place.
   *
   * @param isOthers whether another control unit has answered a parameter
   */
  void learnAnew(SupportMap told, IntPredicate isOthers) {
    SupportMap before = support;
    support =
        before
            .without(number -> !told.supports(number) && !hasAnswered(number))
            .or(told.without(number -> !before.supports(number) && isOthers.test(number)));
  }

  Maxima maxima() {
    return maxima;
  }

  /** The scaling of a parameter's data, which themselves may tell more about it. */
  Maxima maxima(int parameter, Octets data) {
    if (parameter == Maxima.TURBO_SPEED_PARAMETER) {
      maxima = maxima.withTurboSpeed(data);
    }
    return maxima;
  }

  /** Data bytes of every parameter from 0 to 0xFF; 0 where nothing was learnt. Not a copy. */
  int[] lengths() {
    return lengths;
  }

  /** Notes that an answer to several parameters could be taken apart. */
  void fits() {
    misfits = false;
  }

  /**
   * Notes that one could not: once that may be a damaged byte, twice in a row lengths are not what
   * was learnt.
   *
   * @return whether it is the second
   */
  boolean misfitsAgain() {
    boolean isAgain = misfits;
    misfits = true;
    return isAgain;
  }

  /** Takes the answer to a request for this parameter alone. */
  void learn(int parameter, Octets data) {
    lengths[parameter] = data.size();
    if (parameter == Maxima.MANIFOLD_PARAMETER) {
      maxima = maxima.withManifold(data);
    } else if (parameter == Maxima.AIR_FLOW_PARAMETER) {
      maxima = maxima.withAirFlow(data);
    }
  }
}
