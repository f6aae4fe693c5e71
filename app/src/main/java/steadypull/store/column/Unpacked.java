package steadypull.store.column;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Keeps pieces by their number, those used last, up to a total size. One thread. */
final class Unpacked<T> {
  private final LinkedHashMap<Integer, Piece<T>> pieces = new LinkedHashMap<>(16, 0.75f, true);
  private final int mostOctets;
  private long octets;

  private record Piece<T>(T content, int octets) {}

  Unpacked(int mostOctets) {
    this.mostOctets = mostOctets;
  }

  /** The piece of that number, or null if it is not kept. */
  @Nullable T find(int number) {
    Piece<T> piece = pieces.get(number);
    return piece == null ? null : piece.content;
  }

  /** Keeps a piece, and lets go of those not used for longest; never of this one. */
  void keep(int number, T content, int contentOctets) {
    Piece<T> before = pieces.put(number, new Piece<>(content, contentOctets));
    octets += contentOctets - (before == null ? 0 : before.octets);
    var oldest = pieces.entrySet().iterator();
    while (octets > mostOctets && pieces.size() > 1) {
      Map.Entry<Integer, Piece<T>> piece = oldest.next();
      octets -= piece.getValue().octets;
      oldest.remove();
    }
  }
}
