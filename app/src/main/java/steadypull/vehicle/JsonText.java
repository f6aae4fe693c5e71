package steadypull.vehicle;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import steadypull.vehicle.JsonValue.Place;

/**
 * Reads a JSON text (RFC 8259) into values that know their place. Keys must differ; nothing may
 * follow the first value.
 */
final class JsonText {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(20).build())
          .build();

  private final String file;

  private JsonText(String file) {
    this.file = file;
  }

  static JsonValue read(String text, String file) throws VehicleFileException {
    return new JsonText(file).whole(text.startsWith("\uFEFF") ? text.substring(1) : text);
  }

  private JsonValue whole(String text) throws VehicleFileException {
    try (JsonParser parser = FACTORY.createParser(text)) {
      JsonValue value = value(parser, parser.nextToken());
      if (parser.nextToken() != null) {
        throw fault(place(parser), "the end of the file", "more text", null);
      }
      return value;
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      Place place = at == null ? new Place(1, 1) : new Place(at.getLineNr(), at.getColumnNr());
      throw fault(place, "JSON", e.getOriginalMessage(), e);
    } catch (IOException e) {
      throw fault(new Place(1, 1), "JSON", String.valueOf(e.getMessage()), e);
    }
  }

  private JsonValue value(JsonParser parser, @Nullable JsonToken token)
      throws IOException, VehicleFileException {
    if (token == null) {
      throw fault(place(parser), "JSON", "the end of the file", null);
    }
    Place place = place(parser);
    return switch (token) {
      case START_OBJECT -> fields(parser, place);
      case START_ARRAY -> items(parser, place);
      case VALUE_STRING -> new JsonValue.Text(place, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
          new JsonValue.Quantity(place, finite(parser, place), parser.getText());
      case VALUE_TRUE, VALUE_FALSE -> new JsonValue.Flag(place, token == JsonToken.VALUE_TRUE);
      case VALUE_NULL -> new JsonValue.Nothing(place);
      case END_ARRAY, END_OBJECT, FIELD_NAME, NOT_AVAILABLE, VALUE_EMBEDDED_OBJECT ->
          throw fault(place, "a value", token.toString(), null);
    };
  }

  private JsonValue fields(JsonParser parser, Place place)
      throws IOException, VehicleFileException {
    Map<String, JsonValue> values = new LinkedHashMap<>();
    Map<String, Place> keyPlaces = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      keyPlaces.put(key, place(parser));
      values.put(key, value(parser, parser.nextToken()));
    }
    return new JsonValue.Fields(place, values, keyPlaces);
  }

  private JsonValue items(JsonParser parser, Place place) throws IOException, VehicleFileException {
    List<JsonValue> values = new ArrayList<>();
    for (JsonToken token = parser.nextToken();
        token != JsonToken.END_ARRAY;
        token = parser.nextToken()) {
      values.add(value(parser, token));
    }
    return new JsonValue.Items(place, values);
  }

  private double finite(JsonParser parser, Place place) throws IOException, VehicleFileException {
    double value = parser.getDoubleValue();
    if (!Double.isFinite(value)) {
      throw fault(place, "a finite number", parser.getText(), null);
    }
    return value;
  }

  private static Place place(JsonParser parser) {
    JsonLocation at = parser.currentTokenLocation();
    return new Place(at.getLineNr(), at.getColumnNr());
  }

  private VehicleFileException fault(
      Place place, String expected, String found, @Nullable Exception cause) {
    String message =
        "%s, line %d, column %d: expected %s, found %s. Nothing was taken from the file."
            .formatted(file, place.line(), place.column(), expected, found);
    return cause == null
        ? new VehicleFileException(message)
        : new VehicleFileException(message, cause);
  }
}
