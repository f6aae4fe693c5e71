package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import steadypull.store.TripDetails;

/** What people say of a trip, as options that several commands share. */
final class DetailOptions {
  @Option(
      names = "--label",
      paramLabel = "TEXT",
      converter = PlainText.Label.class,
      description = "Run label, such as baseline.")
  private @Nullable String label;

  @Option(
      names = "--note",
      paramLabel = "TEXT",
      converter = Note.class,
      description = "Anything worth remembering.")
  private @Nullable String note;

  @Option(
      names = "--tag",
      paramLabel = "WORD",
      converter = Tag.class,
      description = "A word to find it by; may be given several times.")
  private List<String> tags = new ArrayList<>();

  @Option(
      names = "--fitted",
      paramLabel = "TEXT",
      converter = PlainText.Label.class,
      description = "What was fitted, such as second charge cooler.")
  private @Nullable String fitted;

  @Option(
      names = "--outside",
      paramLabel = "TEXT",
      converter = PlainText.Label.class,
      description = "Weather, wind and road in words.")
  private @Nullable String outside;

  @Option(
      names = "--outside-temp",
      paramLabel = "DEGC",
      converter = Outside.class,
      description = "Outside temperature as somebody read it, or none.")
  private @Nullable OptionalDouble outsideCelsius;

  /** Whether any of these was given. */
  boolean saySomething() {
    return !tags.isEmpty()
        || Stream.of(label, note, fitted, outside, outsideCelsius).anyMatch(Objects::nonNull);
  }

  /** The details with what was said now in place of what was said before; tags are added. */
  TripDetails applyTo(TripDetails before) {
    List<String> all = new ArrayList<>(before.tags());
    all.addAll(tags);
    return new TripDetails(
        label == null ? before.label() : label,
        note == null ? before.note() : note,
        all,
        fitted == null ? before.fitted() : fitted,
        outside == null ? before.outside() : outside,
        outsideCelsius == null ? before.outsideCelsius() : outsideCelsius);
  }

  /** Free text, perhaps of several lines. */
  static final class Note implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
      boolean isPlain =
          text.chars()
              .noneMatch(each -> Character.isISOControl(each) && each != '\n' && each != '\t');
      if (!isPlain) {
        throw new TypeConversionException(
            "expected text of one or more lines, found a control character");
      }
      return text.strip();
    }
  }

  /** One tag. */
  static final class Tag implements ITypeConverter<String> {
    private final ITypeConverter<String> line = new PlainText.Name();

    @Override
    public String convert(String text) throws Exception {
      return line.convert(text);
    }
  }

  /** A temperature in degC, or none. */
  static final class Outside implements ITypeConverter<OptionalDouble> {
    @Override
    public OptionalDouble convert(String text) {
      if (text.equalsIgnoreCase("none")) {
        return OptionalDouble.empty();
      }
      try {
        OptionalDouble celsius = OptionalDouble.of(Double.parseDouble(text));
        return TripDetails.NONE.withOutsideCelsius(celsius).outsideCelsius();
      } catch (IllegalArgumentException unusable) {
        throw new TypeConversionException(
            "expected degC from -60 to 60 such as 34.5, or none, found \"" + text + "\"");
      }
    }
  }
}
