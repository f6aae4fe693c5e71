package steadypull.store.column;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import org.jspecify.annotations.Nullable;

/**
 * The pieces of one kind of a trip, segments or overviews, unpacked when they are asked for: those
 * that will be wanted next are read along with them, and all are unpacked on every core. Asked on
 * one thread, on which it also reads.
 */
final class Pieces<T> {
  private final Bytes bytes;
  private final Form<T> form;
  private final int mostAtOnce;
  private final Unpacked<T> kept;
  private final Map<Integer, Unpacking<Optional<Piece<T>>>> underWay = new HashMap<>();
  private final BitSet damaged = new BitSet();

  /** Reads packed pieces. */
  interface Bytes {
    /** The pieces from a number up to another, which is left out. */
    List<byte[]> read(int from, int to);
  }

  /** Unpacks a piece; on any thread. */
  interface Form<T> {
    Piece<T> unpack(byte[] bytes) throws DamagedSegmentException;
  }

  /** A piece and about the room it takes in memory. */
  record Piece<T>(T content, int octets) {}

  /** Pieces, of which so many are read at once, and so many octets are kept. */
  Pieces(Bytes bytes, Form<T> form, int mostAtOnce, int mostOctets) {
    this.bytes = bytes;
    this.form = form;
    this.mostAtOnce = mostAtOnce;
    this.kept = new Unpacked<>(mostOctets);
  }

  /**
   * A piece, or null if it is damaged.
   *
   * @param wanted the numbers of the pieces that will be asked for, this one too
   */
  @Nullable T find(int number, BitSet wanted) {
    if (damaged.get(number)) {
      return null;
    }
    T found = kept.find(number);
    if (found != null) {
      return found;
    }
    if (!underWay.containsKey(number)) {
      start(number, missing(number, wanted));
    }
    return settle(number);
  }

  /**
   * Has pieces read, and unpacked while nobody waits for them.
   *
   * @param most so many at most
   */
  void readAhead(BitSet wanted, int most) {
    int room = most - underWay.size();
    int number = wanted.nextSetBit(0);
    while (number >= 0 && room > 0) {
      int to = isThere(number) ? number + 1 : Math.min(missing(number, wanted), number + room);
      if (!isThere(number)) {
        start(number, to);
        room -= to - number;
      }
      number = wanted.nextSetBit(to);
    }
  }

  /** The pieces that are damaged, as far as they have been asked for: their numbers, set. */
  BitSet damaged() {
    return damaged;
  }

  /** Up to where the wanted pieces follow one another and none is there yet. */
  private int missing(int number, BitSet wanted) {
    int most = Math.min(number + mostAtOnce, Math.max(number + 1, wanted.nextClearBit(number)));
    int to = number + 1;
    while (to < most && !isThere(to)) {
      to++;
    }
    return to;
  }

  private boolean isThere(int number) {
    return damaged.get(number) || underWay.containsKey(number) || kept.find(number) != null;
  }

  private void start(int from, int to) {
    int number = from;
    for (byte[] packed : bytes.read(from, to)) {
      Unpacking<Optional<Piece<T>>> unpacking = new Unpacking<>(() -> unpack(packed));
      underWay.put(number++, unpacking);
      ForkJoinPool.commonPool().execute(unpacking);
    }
  }

  private @Nullable T settle(int number) {
    Optional<Piece<T>> piece =
        Objects.requireNonNull(underWay.remove(number), "A piece is under way").result();
    if (piece.isEmpty()) {
      damaged.set(number);
      return null;
    }
    kept.keep(number, piece.get().content, piece.get().octets);
    return piece.get().content;
  }

  private Optional<Piece<T>> unpack(byte[] packed) {
    try {
      return Optional.of(form.unpack(packed));
    } catch (DamagedSegmentException e) {
      // The rest of the trip is drawn; who asks is told by damaged().
      return Optional.empty();
    }
  }
}
