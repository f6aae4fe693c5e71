package steadypull.compare;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * What somebody said of a run that no channel tells. Immutable.
 *
 * @param words by the ids of what is asked for (see {@code Asked}); absent where nothing was said
 * @param probeCelsius outside or cell temperature by a probe of one's own, which goes before the
 *     vehicle's sensor; empty if none was told
 */
public record RunNotes(Map<String, String> words, OptionalDouble probeCelsius) {
  /** Nothing was said. */
  public static final RunNotes NONE = new RunNotes(Map.of(), OptionalDouble.empty());

  public RunNotes {
    words = Map.copyOf(words);
  }
}
