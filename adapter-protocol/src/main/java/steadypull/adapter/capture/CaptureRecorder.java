package steadypull.adapter.capture;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Consumer;

/**
 * Turns what happens on links into events. What is heard is held back until its line has ended,
 * because only whole lines can be masked; the events carry the times and the cuts as they were.
 * Used by one thread at a time.
 */
final class CaptureRecorder {
  /** A line longer than that is noise; it is let go as it is a part of a line. */
  private static final int LONGEST_LINE = 512;

  /** One byte and when it came. */
  private record Heard(long micros, char character) {}

  private final Consumer<CaptureEvent> events;
  private final boolean keepsVin;
  private final VinMask mask = new VinMask();
  private final List<Heard> line = new ArrayList<>();
  private final List<Heard> ready = new ArrayList<>();
  private OptionalLong beginning = OptionalLong.empty();
  private boolean isOpen;

  CaptureRecorder(Consumer<CaptureEvent> events, boolean keepsVin) {
    this.events = events;
    this.keepsVin = keepsVin;
  }

  void opened(long nanoTime) {
    tell(nanoTime, CaptureEvent.Kind.OPENED, "");
    isOpen = true;
  }

  void refused(long nanoTime, String reason) {
    tell(nanoTime, CaptureEvent.Kind.REFUSED, reason);
  }

  void sent(long nanoTime, byte[] bytes) {
    letGo();
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    mask.asked(text);
    tell(nanoTime, CaptureEvent.Kind.SENT, text);
  }

  void heard(long nanoTime, byte[] bytes) {
    long micros = micros(nanoTime);
    for (byte one : bytes) {
      char character = (char) (one & 0xFF);
      if (character == '\r' || character == '\n' || character == '>') {
        endLine(true);
        ready.add(new Heard(micros, character));
      } else {
        line.add(new Heard(micros, character));
      }
      if (line.size() > LONGEST_LINE) {
        endLine(false);
      }
    }
    flush();
  }

  void lost(long nanoTime, String reason) {
    letGo();
    tell(nanoTime, CaptureEvent.Kind.LOST, reason);
    isOpen = false;
  }

  void closed(long nanoTime) {
    letGo();
    if (isOpen) {
      tell(nanoTime, CaptureEvent.Kind.CLOSED, "");
    }
    isOpen = false;
  }

  /** Lets go of what is held back. */
  void end() {
    letGo();
  }

  private void letGo() {
    endLine(false);
    flush();
  }

  private void endLine(boolean isWhole) {
    StringBuilder text = new StringBuilder();
    line.forEach(heard -> text.append(heard.character()));
    String masked = keepsVin ? text.toString() : mask.masked(text.toString(), isWhole);
    for (int i = 0; i < line.size(); i++) {
      ready.add(new Heard(line.get(i).micros(), masked.charAt(i)));
    }
    line.clear();
  }

  /** Tells what is ready: bytes that came together are one event. */
  private void flush() {
    StringBuilder together = new StringBuilder();
    for (int i = 0; i < ready.size(); i++) {
      together.append(ready.get(i).character());
      if (i + 1 == ready.size() || ready.get(i + 1).micros() != ready.get(i).micros()) {
        events.accept(
            new CaptureEvent(ready.get(i).micros(), CaptureEvent.Kind.HEARD, together.toString()));
        together.setLength(0);
      }
    }
    ready.clear();
  }

  private void tell(long nanoTime, CaptureEvent.Kind kind, String text) {
    events.accept(new CaptureEvent(micros(nanoTime), kind, text));
  }

  private long micros(long nanoTime) {
    if (beginning.isEmpty()) {
      beginning = OptionalLong.of(nanoTime);
    }
    return Math.max(0, (nanoTime - beginning.getAsLong()) / 1000);
  }
}
