package steadypull.vehicle;

import java.util.List;
import java.util.Map;

/** One value of a JSON text, together with the place where it begins. */
sealed interface JsonValue {
  /** Where the value begins. */
  Place place();

  /** The value as a message shows it. */
  String shown();

  /**
   * A place in a text.
   *
   * @param line from 1
   * @param column from 1
   */
  record Place(int line, int column) {}

  record Text(Place place, String value) implements JsonValue {
    @Override
    public String shown() {
      return "\"" + (value.length() > 60 ? value.substring(0, 60) + "..." : value) + "\"";
    }
  }

  /** A finite number; {@code text} as it was written. */
  record Quantity(Place place, double value, String text) implements JsonValue {
    @Override
    public String shown() {
      return "the number " + text;
    }
  }

  record Flag(Place place, boolean value) implements JsonValue {
    @Override
    public String shown() {
      return String.valueOf(value);
    }
  }

  record Nothing(Place place) implements JsonValue {
    @Override
    public String shown() {
      return "null";
    }
  }

  record Items(Place place, List<JsonValue> values) implements JsonValue {
    public Items {
      values = List.copyOf(values);
    }

    @Override
    public String shown() {
      return "a list of " + values.size();
    }
  }

  /** An object; {@code keyPlaces} has the place of each key, in the order of the text. */
  record Fields(Place place, Map<String, JsonValue> values, Map<String, Place> keyPlaces)
      implements JsonValue {
    @Override
    public String shown() {
      return "an object";
    }
  }
}
