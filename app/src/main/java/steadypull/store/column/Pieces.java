package steadypull.store.column;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
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
    return found == null ? bring(number, missing(number, wanted)) : found;
  }

  /** The pieces that are damaged, as far as they have been asked for: their numbers, set. */
  BitSet damaged() {
    return damaged;
  }

  /** Up to where the wanted pieces follow one another and none is there yet. */
  private int missing(int number, BitSet wanted) {
    int most = Math.min(number + mostAtOnce, Math.max(number + 1, wanted.nextClearBit(number)));
    int to = number + 1;
    while (to < most && !damaged.get(to) && kept.find(to) == null) {
      to++;
    }
    return to;
  }

  private @Nullable T bring(int number, int to) {
    List<ForkJoinTask<Optional<Piece<T>>>> unpacked = new ArrayList<>();
    for (byte[] packed : bytes.read(number, to)) {
      unpacked.add(ForkJoinTask.adapt(() -> unpack(packed)));
    }
    ForkJoinTask.invokeAll(unpacked);
    // The one that was asked for comes last, so that it is the last to be let go of.
    for (int place = unpacked.size() - 1; place >= 0; place--) {
      keep(number + place, unpacked.get(place).join());
    }
    return unpacked.getFirst().join().map(Piece::content).orElse(null);
  }

  private void keep(int number, Optional<Piece<T>> unpacked) {
    if (unpacked.isPresent()) {
      kept.keep(number, unpacked.get().content, unpacked.get().octets);
    } else {
      damaged.set(number);
    }
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
