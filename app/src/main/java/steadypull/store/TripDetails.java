package steadypull.store;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What people say of a trip; may be changed at any time. Immutable. Every text may be empty.
 *
 * @param label the run, such as {@code baseline} or {@code after}
 * @param note free text
 * @param tags words or phrases to find the trip by, each a line without blanks around it, none
 *     twice
 * @param fitted what was fitted to vehicle and trailer, such as {@code second charge cooler}
 * @param outside weather, wind and road in words
 * @param outsideCelsius outside temperature as somebody read it, -60 to 60 degC; empty: not read
 */
public record TripDetails(
    String label,
    String note,
    List<String> tags,
    String fitted,
    String outside,
    OptionalDouble outsideCelsius) {
  /** Nothing was said. */
  public static final TripDetails NONE =
      new TripDetails("", "", List.of(), "", "", OptionalDouble.empty());

  private static final double HOTTEST_CELSIUS = 60;

  public TripDetails {
    Objects.requireNonNull(label);
    Objects.requireNonNull(note);
    Objects.requireNonNull(fitted);
    Objects.requireNonNull(outside);
    tags = tags.stream().map(TripDetails::tag).distinct().toList();
    if (!outsideCelsius.isEmpty() && !(Math.abs(outsideCelsius.getAsDouble()) <= HOTTEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "An outside temperature lies between -60 and 60 degC, found "
              + outsideCelsius.getAsDouble());
    }
  }

  /** Only a run label. */
  public static TripDetails ofLabel(String label) {
    return NONE.withLabel(label);
  }

  public TripDetails withLabel(String changed) {
    return new TripDetails(changed, note, tags, fitted, outside, outsideCelsius);
  }

  public TripDetails withNote(String changed) {
    return new TripDetails(label, changed, tags, fitted, outside, outsideCelsius);
  }

  public TripDetails withTags(List<String> changed) {
    return new TripDetails(label, note, changed, fitted, outside, outsideCelsius);
  }

  public TripDetails withFitted(String changed) {
    return new TripDetails(label, note, tags, changed, outside, outsideCelsius);
  }

  public TripDetails withOutside(String changed) {
    return new TripDetails(label, note, tags, fitted, changed, outsideCelsius);
  }

  public TripDetails withOutsideCelsius(OptionalDouble changed) {
    return new TripDetails(label, note, tags, fitted, outside, changed);
  }

  private static String tag(String text) {
    String tag = text.strip();
    if (tag.isEmpty() || tag.lines().count() != 1) {
      throw new IllegalArgumentException("A tag is a line of text, found \"" + text + "\"");
    }
    return tag;
  }
}
