package steadypull.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.UnitSystem;
import steadypull.drive.Pace;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.CoolingLayout;

/** Reads one of a closed set of words, in whatever case. */
abstract class WordOption<T> implements ITypeConverter<T> {
  private final List<T> values;

  WordOption(List<T> values) {
    this.values = values;
  }

  /** How people write the value. */
  abstract String word(T value);

  @Override
  public T convert(String text) {
    return values.stream()
        .filter(each -> word(each).equalsIgnoreCase(text))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected " + String.join(" or ", words()) + ", found \"" + text + "\""));
  }

  private List<String> words() {
    return values.stream().map(this::word).toList();
  }

  private static String lowerCase(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  /** How the charge air is cooled. */
  static final class Layout extends WordOption<CoolingLayout> {
    Layout() {
      super(List.of(CoolingLayout.values()));
    }

    @Override
    String word(CoolingLayout value) {
      return value.word();
    }
  }

  /** A part of a vehicle's cooling. */
  static final class CircuitWord extends WordOption<Circuit> {
    CircuitWord() {
      super(List.of(Circuit.values()));
    }

    @Override
    String word(Circuit value) {
      return value.word();
    }
  }

  /** How hard to ask the vehicle. */
  static final class PaceWord extends WordOption<Pace> {
    PaceWord() {
      super(List.of(Pace.values()));
    }

    @Override
    String word(Pace value) {
      return lowerCase(value);
    }
  }

  /** Units for what people read. */
  static final class Units extends WordOption<UnitSystem> {
    Units() {
      super(List.of(UnitSystem.values()));
    }

    @Override
    String word(UnitSystem value) {
      return lowerCase(value);
    }
  }

  /** A language that the program has words in, with or without a country, such as de-AT. */
  static final class Language extends WordOption<Locale> {
    Language() {
      super(List.of(Locale.ENGLISH, Locale.GERMAN));
    }

    @Override
    String word(Locale value) {
      return value.toLanguageTag();
    }

    @Override
    public Locale convert(String text) {
      Locale wanted = Locale.forLanguageTag(text.replace('_', '-'));
      boolean isKnown =
          Stream.of(Locale.ENGLISH, Locale.GERMAN)
              .anyMatch(known -> known.getLanguage().equals(wanted.getLanguage()));
      return isKnown ? wanted : super.convert(text);
    }
  }
}
