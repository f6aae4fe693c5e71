package steadypull.adapter;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import steadypull.adapter.diagnostic.DefinedSignal;

/**
 * What to read and how hard to ask.
 *
 * @param wanted keys of the standard signals wanted; those the vehicle does not offer are left out
 * @param seldom those of the wanted that are worth asking for every ten seconds only, as long as
 *     their parameter carries none that is wanted more often
 * @param defined the vehicle's own signals behind service 22
 * @param pace how hard to ask
 */
public record ReaderSettings(
    Set<String> wanted, Set<String> seldom, List<DefinedSignal> defined, Pace pace) {
  public ReaderSettings {
    wanted = Set.copyOf(wanted);
    seldom = Set.copyOf(seldom);
    defined = List.copyOf(defined);
    Objects.requireNonNull(pace);
  }

  /** Settings under which each signal is asked for as often as its kind needs. */
  public ReaderSettings(Set<String> wanted, List<DefinedSignal> defined, Pace pace) {
    this(wanted, Set.of(), defined, pace);
  }

  /** How hard the reader asks. */
  public enum Pace {
    /** Due times as the channels need, at most 20 requests a second. */
    POLITE,
    /** As fast as the link allows. */
    FULL
  }
}
