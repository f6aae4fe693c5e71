package steadypull.adapter.capture;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * What stands above the dialogue of a capture. Immutable.
 *
 * @param address the port, as the user wrote it
 * @param started the wall's time
 * @param software name and version of the program
 * @param keepsVin whether the vehicle's identification number is written as it is; else it is
 *     masked in all its forms
 * @param notes what a replay has to know, by one lower-case word each; letters beyond one byte are
 *     lost
 */
public record CaptureHead(
    String address, Instant started, String software, boolean keepsVin, Map<String, String> notes) {
  private static final Pattern WORD = Pattern.compile("[a-z]+");

  public CaptureHead {
    Objects.requireNonNull(address);
    Objects.requireNonNull(started);
    Objects.requireNonNull(software);
    notes = Map.copyOf(notes);
    for (String word : notes.keySet()) {
      if (!WORD.matcher(word).matches()) {
        throw new IllegalArgumentException("A note has one lower-case word, found " + word);
      }
    }
  }

  /** The lines above the dialogue, each with its end. */
  String text() {
    StringBuilder text = new StringBuilder();
    text.append(CaptureText.FIRST_LINE).append('\n');
    text.append("address ").append(CaptureText.escaped(address)).append('\n');
    text.append("started ").append(started).append('\n');
    text.append("software ").append(CaptureText.escaped(software)).append('\n');
    text.append("vin ").append(keepsVin ? "kept" : "masked").append('\n');
    new TreeMap<>(notes)
        .forEach(
            (word, note) ->
                text.append(word).append(' ').append(CaptureText.escaped(note)).append('\n'));
    return text.toString();
  }
}
