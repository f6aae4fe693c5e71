package steadypull.compare;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * What was asked of a job and answered. Immutable.
 *
 * @param name as the workshop calls it; may be empty
 * @param both answers that hold for both sides
 * @param before answers for the side before, in place of those
 * @param after likewise
 * @param runs what was said of single runs
 */
public record Job(
    String name,
    Map<Asked, String> both,
    Map<Asked, String> before,
    Map<Asked, String> after,
    List<OfRun> runs) {
  /** Nothing was asked. */
  public static final Job NONE = new Job("", Map.of(), Map.of(), Map.of(), List.of());

  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,6}(\\.\\d{1,6})?");

  public Job {
    Objects.requireNonNull(name);
    requireNumbers(both);
    requireNumbers(before);
    requireNumbers(after);
    both = Map.copyOf(both);
    before = Map.copyOf(before);
    after = Map.copyOf(after);
    runs = List.copyOf(runs);
  }

  /**
   * What was said of one run, or of every run of a trip.
   *
   * @param source the trip's id, a beginning of it, or the file's name
   * @param atSeconds a moment within the load of the run; empty: every run of the source
   * @param words answers, in place of the side's
   * @param probeCelsius outside air by a probe of one's own, -60 to 60 degC
   * @param leftOut why it does not count; empty: it does
   */
  public record OfRun(
      String source,
      OptionalDouble atSeconds,
      Map<Asked, String> words,
      OptionalDouble probeCelsius,
      Optional<String> leftOut) {
    public OfRun {
      Objects.requireNonNull(source);
      Objects.requireNonNull(atSeconds);
      Objects.requireNonNull(leftOut);
      requireNumbers(words);
      words = Map.copyOf(words);
      if (probeCelsius.isPresent() && !(Math.abs(probeCelsius.getAsDouble()) <= 60)) {
        throw new IllegalArgumentException(
            "A probe's value lies between -60 and 60 degC, found " + probeCelsius.getAsDouble());
      }
    }
  }

  private static void requireNumbers(Map<Asked, String> answers) {
    answers.forEach(
        (asked, answer) -> {
          if (asked.isNumber() && !NUMBER.matcher(answer).matches()) {
            throw new IllegalArgumentException(
                "%s is a number, found \"%s\"".formatted(asked.id(), answer));
          }
        });
  }

  /** The answer that holds for a side; empty if nobody gave one. */
  public Optional<String> answer(Asked asked, Side side) {
    String ofSide = (side == Side.BEFORE ? before : after).get(asked);
    return Optional.ofNullable(ofSide == null ? both.get(asked) : ofSide);
  }
}
