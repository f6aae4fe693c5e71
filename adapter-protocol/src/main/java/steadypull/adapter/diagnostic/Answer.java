package steadypull.adapter.diagnostic;

import java.util.Map;
import java.util.TreeMap;
import steadypull.adapter.frame.Payload;

/** What one message says to a request. A closed set. */
public sealed interface Answer {

  /**
   * Service 01 answered.
   *
   * @param dataByParameter data bytes by parameter number, rising
   */
  record CurrentData(Map<Integer, Payload> dataByParameter) implements Answer {
    public CurrentData {
      dataByParameter = Map.copyOf(new TreeMap<>(dataByParameter));
    }
  }

  /** Service 22 answered with the data of the identifier asked. */
  record IdentifiedData(Payload data) implements Answer {}

  /** The control unit said no, or not yet. */
  record Refused(NegativeCode code) implements Answer {}

  /** A sound message that answers something else, such as an earlier request. */
  record Stray() implements Answer {}
}
