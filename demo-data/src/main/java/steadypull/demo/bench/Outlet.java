package steadypull.demo.bench;

import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.OptionalLong;

/** Characters on their way out, each with the moment at which the serial line has carried it. */
final class Outlet {
  private record Sent(long nanos, byte character) {}

  private final long characterNanos;
  private final Deque<Sent> queue = new ArrayDeque<>();
  private long isFreeAt;

  Outlet(long characterNanos) {
    this.characterNanos = characterNanos;
  }

  /** Queues text that is ready at a moment. */
  void print(String text, long nanos) {
    isFreeAt = Math.max(isFreeAt, nanos);
    for (int i = 0; i < text.length(); i++) {
      isFreeAt += characterNanos;
      queue.add(new Sent(isFreeAt, (byte) text.charAt(i)));
    }
  }

  /** When the last character queued so far will have gone. */
  long isFreeAt() {
    return isFreeAt;
  }

  /** How many characters wait at a moment. */
  int backlog(long nanos) {
    int waiting = 0;
    for (Iterator<Sent> last = queue.descendingIterator();
        last.hasNext() && last.next().nanos() > nanos; ) {
      waiting++;
    }
    return waiting;
  }

  /** Puts text before whatever has not gone by a moment. */
  void interject(String text, long nanos) {
    Deque<Sent> rest = new ArrayDeque<>();
    while (!queue.isEmpty() && queue.getLast().nanos() > nanos) {
      rest.addFirst(queue.removeLast());
    }
    isFreeAt = Math.min(isFreeAt, nanos);
    print(text, nanos);
    for (Sent sent : rest) {
      isFreeAt = Math.max(isFreeAt + characterNanos, sent.nanos());
      queue.add(new Sent(isFreeAt, sent.character()));
    }
  }

  /** Forgets what has not gone by a moment. */
  void cut(long nanos) {
    while (!queue.isEmpty() && queue.getLast().nanos() > nanos) {
      queue.removeLast();
    }
    isFreeAt = Math.min(isFreeAt, nanos);
  }

  /** Takes what has gone by a moment. */
  byte[] take(long nanos) {
    ByteArrayOutputStream taken = new ByteArrayOutputStream();
    while (!queue.isEmpty() && queue.getFirst().nanos() <= nanos) {
      taken.write(queue.removeFirst().character());
    }
    return taken.toByteArray();
  }

  OptionalLong nextNanos() {
    return queue.isEmpty() ? OptionalLong.empty() : OptionalLong.of(queue.getFirst().nanos());
  }
}
