package steadypull.adapter.capture;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkException;

/** Reads captures from files. Stateless. */
final class CaptureFile {
  private CaptureFile() {}

  /**
   * Reads a whole capture. A last line without its end is that of a program that was killed, and
   * counts as not written.
   *
   * @param address for messages
   * @throws LinkException if there is no such file or it is no capture; names the line
   */
  static RecordedDialogue read(String address, Path file) throws LinkException {
    List<String> lines = lines(address, file);
    if (lines.isEmpty() || !lines.getFirst().equals(CaptureText.FIRST_LINE)) {
      throw refusal(
          address, "it does not begin with the line \"" + CaptureText.FIRST_LINE + "\"", null);
    }
    return RecordedDialogue.of(events(address, lines));
  }

  /**
   * A note of the head; empty if the capture has none of that word.
   *
   * @throws LinkException if there is no such file
   */
  static Optional<String> note(String address, Path file, String word) throws LinkException {
    String beginning = word + " ";
    return lines(address, file).stream()
        .takeWhile(line -> line.isEmpty() || !Character.isDigit(line.charAt(0)))
        .filter(line -> line.startsWith(beginning))
        .findFirst()
        .flatMap(line -> CaptureText.plain(line.substring(beginning.length())));
  }

  private static List<String> lines(String address, Path file) throws LinkException {
    try {
      String text = Files.readString(file, StandardCharsets.ISO_8859_1);
      int end = text.lastIndexOf('\n');
      return end < 0 ? List.of() : Arrays.asList(text.substring(0, end).split("\r?\n", -1));
    } catch (NoSuchFileException missing) {
      throw refusal(address, "there is no such file", missing);
    } catch (IOException unreadable) {
      throw refusal(address, String.valueOf(unreadable.getMessage()), unreadable);
    }
  }

  private static List<CaptureEvent> events(String address, List<String> lines)
      throws LinkException {
    List<CaptureEvent> events = new ArrayList<>();
    long last = 0;
    for (int number = 2; number <= lines.size(); number++) {
      String line = lines.get(number - 1);
      boolean isEvent = !line.isEmpty() && Character.isDigit(line.charAt(0));
      if (!isEvent && events.isEmpty()) {
        continue;
      }
      Optional<CaptureEvent> event = CaptureText.parse(line);
      if (event.isEmpty()) {
        throw refusal(
            address,
            "line %d is no event: expected SECONDS KIND TEXT, found \"%s\""
                .formatted(number, excerpt(line)),
            null);
      }
      // What was held back until its line ended carries the time at which it came.
      last = Math.max(last, event.get().micros());
      events.add(new CaptureEvent(last, event.get().kind(), event.get().text()));
    }
    return events;
  }

  private static String excerpt(String line) {
    String printable = line.replaceAll("[^ -~]", "?");
    return printable.length() <= 60 ? printable : printable.substring(0, 60) + "...";
  }

  private static LinkException refusal(String address, String found, @Nullable Throwable cause) {
    return new LinkException(
        address,
        "replay",
        found,
        "Name a file that \"record --raw\" wrote, as it was written.",
        cause);
  }
}
