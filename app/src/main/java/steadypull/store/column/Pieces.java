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
  private final Witness<T> witness;
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

  /** Hears of every piece that was unpacked, on the thread that asks. */
  interface Witness<T> {
    /** Hears of the piece of that number; null: it is damaged. */
    void unpacked(int number, @Nullable T piece);
  }

  /** A piece and about the room it takes in memory. */
  record Piece<T>(T content, int octets) {}

  /** Pieces, of which so many are read at once, and so many octets are kept. */
  Pieces(Bytes bytes, Form<T> form, Witness<T> witness, int mostAtOnce, int mostOctets) {
    this.bytes = bytes;
    this.form = form;
    this.witness = witness;
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

  /** A piece that nothing has to be read or waited for; null if it is not there or damaged. */
  @Nullable T findKept(int number) {
    Unpacking<?> unpacking = underWay.get(number);
    return unpacking != null && unpacking.isDone() ? settle(number) : kept.find(number);
  }

  /**
   * Has the first of the wanted pieces that are not there read, and unpacked while nobody waits for
   * them. What is not yet unpacked of those from before is finished first, so that never more than
   * these are under way.
   *
   * @param most so many at most
   * @return their numbers, set
   */
  BitSet readAhead(BitSet wanted, int most) {
    underWay.keySet().stream().toList().forEach(this::settle);
    BitSet begun = new BitSet();
    int number = wanted.nextSetBit(0);
    while (number >= 0 && begun.cardinality() < most) {
      int to = number + 1;
      if (!isThere(number)) {
        to = Math.min(missing(number, wanted), number + most - begun.cardinality());
        start(number, to);
        begun.set(number, to);
      }
      number = wanted.nextSetBit(to);
    }
    return begun;
  }

  /** Unpacks a piece that is not there without keeping it. */
  void look(int number) {
    if (!isThere(number)) {
      Optional<Piece<T>> piece = unpack(bytes.read(number, number + 1).getFirst());
      witness.unpacked(number, piece.map(Piece::content).orElse(null));
    }
  }

  /** Has no core unpack what nobody asked for yet. */
  void leave() {
    underWay.values().forEach(Unpacking::leave);
    underWay.clear();
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
      witness.unpacked(number, null);
      return null;
    }
    witness.unpacked(number, piece.get().content);
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
