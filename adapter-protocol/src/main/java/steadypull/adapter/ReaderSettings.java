package steadypull.adapter;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import steadypull.adapter.diagnostic.DefinedSignal;

/**
 * What to read and how hard to ask.
 *
 * @param wanted keys of the standard signals wanted; those the vehicle does not offer are left out
 * @param defined the vehicle's own signals behind service 22
 * @param pace how hard to ask
 */
public record ReaderSettings(Set<String> wanted, List<DefinedSignal> defined, Pace pace) {
  public ReaderSettings {
    wanted = Set.copyOf(wanted);
    defined = List.copyOf(defined);
    Objects.requireNonNull(pace);
  }

  /** How hard the reader asks. */
  public enum Pace {
    /** Due times as the channels need, at most 20 requests a second. */
    POLITE,
    /** As fast as the link allows. */
    FULL
  }
}
