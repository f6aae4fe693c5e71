package steadypull.vehicle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import steadypull.channel.NearMatch;

/** Takes the fields of one JSON object by name and kind; every refusal names place and field. */
final class JsonObjectReader {
  /** Builds a value; its complaint about a part becomes a complaint about the object's place. */
  interface Build<T> {
    T get() throws VehicleFileException;
  }

  private final String file;
  private final String path;
  private final JsonValue.Fields fields;

  private JsonObjectReader(String file, String path, JsonValue.Fields fields) {
    this.file = file;
    this.path = path;
    this.fields = fields;
  }

  /** The object that a whole file holds. */
  static JsonObjectReader ofFile(String text, String file) throws VehicleFileException {
    JsonValue value = JsonText.read(text, file);
    return new JsonObjectReader(file, "", asFields(file, "the whole file", value));
  }

  /** Refuses every key but these. */
  void allowOnly(String... keys) throws VehicleFileException {
    for (var key : fields.keyPlaces().entrySet()) {
      if (!List.of(keys).contains(key.getKey())) {
        throw fault(
            file,
            key.getValue(),
            path + key.getKey(),
            "one of " + String.join(", ", keys),
            "an unknown key",
            NearMatch.question(key.getKey(), List.of(keys)));
      }
    }
  }

  boolean has(String key) {
    return fields.values().containsKey(key);
  }

  String text(String key) throws VehicleFileException {
    JsonValue value = required(key, "text");
    if (value instanceof JsonValue.Text text) {
      return text.value();
    }
    throw unexpected(key, "text");
  }

  String textOr(String key, String otherwise) throws VehicleFileException {
    return has(key) ? text(key) : otherwise;
  }

  double number(String key) throws VehicleFileException {
    JsonValue value = required(key, "a number");
    if (value instanceof JsonValue.Quantity quantity) {
      return quantity.value();
    }
    throw unexpected(key, "a number");
  }

  int wholeNumber(String key) throws VehicleFileException {
    double value = number(key);
    if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
      throw unexpected(key, "a whole number");
    }
    return (int) value;
  }

  OptionalDouble optionalNumber(String key) throws VehicleFileException {
    return has(key) ? OptionalDouble.of(number(key)) : OptionalDouble.empty();
  }

  boolean flag(String key) throws VehicleFileException {
    JsonValue value = required(key, "true or false");
    if (value instanceof JsonValue.Flag flag) {
      return flag.value();
    }
    throw unexpected(key, "true or false");
  }

  /** The numbers of a list; an absent list is empty. */
  List<Double> numbers(String key) throws VehicleFileException {
    List<Double> numbers = new ArrayList<>();
    for (JsonValue value : items(key)) {
      if (!(value instanceof JsonValue.Quantity quantity)) {
        throw fault(file, value.place(), path + key, "a list of numbers", value.shown(), "");
      }
      numbers.add(quantity.value());
    }
    return numbers;
  }

  /** The texts of a list; an absent list is empty. */
  List<String> texts(String key) throws VehicleFileException {
    List<String> texts = new ArrayList<>();
    for (JsonValue value : items(key)) {
      if (!(value instanceof JsonValue.Text text)) {
        throw fault(file, value.place(), path + key, "a list of texts", value.shown(), "");
      }
      texts.add(text.value());
    }
    return texts;
  }

  /** The objects of a list; an absent list is empty. */
  List<JsonObjectReader> objects(String key) throws VehicleFileException {
    List<JsonObjectReader> objects = new ArrayList<>();
    for (JsonValue value : items(key)) {
      String at = "%s%s[%d]".formatted(path, key, objects.size());
      objects.add(new JsonObjectReader(file, at + ".", asFields(file, at, value)));
    }
    return objects;
  }

  /** The object behind a key, if the key is there. */
  Optional<JsonObjectReader> object(String key) throws VehicleFileException {
    JsonValue value = fields.values().get(key);
    return value == null
        ? Optional.empty()
        : Optional.of(
            new JsonObjectReader(file, path + key + ".", asFields(file, path + key, value)));
  }

  /** Runs a record's own checks and gives their complaint the place of this object. */
  <T> T build(Build<T> build) throws VehicleFileException {
    try {
      return build.get();
    } catch (IllegalArgumentException e) {
      String field = path.isEmpty() ? "the whole file" : path.substring(0, path.length() - 1);
      throw new VehicleFileException(
          "%s, line %d, column %d, %s: %s. Nothing was taken from the file."
              .formatted(
                  file, fields.place().line(), fields.place().column(), field, e.getMessage()),
          e);
    }
  }

  VehicleFileException unexpected(String key, String expected) {
    JsonValue value = fields.values().get(key);
    return fault(
        file, placeOf(value), path + key, expected, value == null ? "nothing" : value.shown(), "");
  }

  private JsonValue.Place placeOf(@Nullable JsonValue value) {
    return value == null ? fields.place() : value.place();
  }

  private JsonValue required(String key, String expected) throws VehicleFileException {
    JsonValue value = fields.values().get(key);
    if (value == null) {
      throw unexpected(key, expected);
    }
    return value;
  }

  private List<JsonValue> items(String key) throws VehicleFileException {
    JsonValue value = fields.values().get(key);
    if (value == null) {
      return List.of();
    }
    if (value instanceof JsonValue.Items items) {
      return items.values();
    }
    throw unexpected(key, "a list");
  }

  private static JsonValue.Fields asFields(String file, String path, JsonValue value)
      throws VehicleFileException {
    if (value instanceof JsonValue.Fields fields) {
      return fields;
    }
    throw fault(file, value.place(), path, "an object", value.shown(), "");
  }

  private static VehicleFileException fault(
      String file,
      JsonValue.Place place,
      String field,
      String expected,
      String found,
      String question) {
    return new VehicleFileException(
        "%s, line %d, column %d, %s: expected %s, found %s.%s Nothing was taken from the file."
            .formatted(file, place.line(), place.column(), field, expected, found, question));
  }
}
