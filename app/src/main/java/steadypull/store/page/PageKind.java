package steadypull.store.page;

import java.util.Optional;

/**
 * The pages that hold rows, by their first octet (section 1.6, "B-tree Pages"). The interior page
 * of a table holds none.
 */
public enum PageKind {
  TABLE_LEAF(0x0D, 8, 0),
  INDEX_LEAF(0x0A, 8, 0),
  /** Its cells begin with four octets: the page to the left. */
  INDEX_INTERIOR(0x02, 12, 4);

  private final int mark;
  private final int headerOctets;
  private final int leftOctets;

  PageKind(int mark, int headerOctets, int leftOctets) {
    this.mark = mark;
    this.headerOctets = headerOctets;
    this.leftOctets = leftOctets;
  }

  /** The kind of that first octet, or empty for a page without rows. */
  static Optional<PageKind> of(int mark) {
    for (PageKind kind : values()) {
      if (kind.mark == mark) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  int headerOctets() {
    return headerOctets;
  }

  int leftOctets() {
    return leftOctets;
  }

  /**
   * How much of a payload lies in the cell itself; the rest is on overflow pages (section 1.6: U,
   * P, X, M and K are the names used there).
   */
  int localOctets(long payload, int usable) {
    long x = this == TABLE_LEAF ? usable - 35L : ((usable - 12L) * 64 / 255) - 23;
    if (payload <= x) {
      return (int) payload;
    }
    long m = ((usable - 12L) * 32 / 255) - 23;
    long k = m + ((payload - m) % (usable - 4L));
    return (int) (k <= x ? k : m);
  }
}
