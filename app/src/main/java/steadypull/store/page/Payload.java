package steadypull.store.page;

import java.io.ByteArrayOutputStream;

/**
 * Gathers a payload from its cell and its overflow pages (section 1.6, "Cell Payload Overflow
 * Pages"): each begins with the number of the next.
 */
final class Payload {
  private static final int NEXT_PAGE_OCTETS = 4;

  private final DatabasePages pages;

  Payload(DatabasePages pages) {
    this.pages = pages;
  }

  /**
   * Reads.
   *
   * @param octets the whole payload
   * @param cell stands where the payload begins
   */
  Gathered read(long octets, PageKind kind, Octets cell) throws DamagedPageException {
    int local = kind.localOctets(octets, pages.usableOctets());
    ByteArrayOutputStream gathered = new ByteArrayOutputStream(local);
    gathered.writeBytes(cell.take(local));
    if (local == octets) {
      return new Gathered(gathered.toByteArray(), true);
    }
    int next = cell.unsigned(NEXT_PAGE_OCTETS);
    // Every page brings octets, so that even a chain that bites its tail comes to its end.
    while (gathered.size() < octets && pages.has(next)) {
      Octets page = new Octets(pages.page(next), 0, pages.usableOctets());
      next = page.unsigned(NEXT_PAGE_OCTETS);
      gathered.writeBytes(page.take((int) Math.min(page.remaining(), octets - gathered.size())));
    }
    boolean isWhole = gathered.size() == octets && next == 0;
    return new Gathered(gathered.toByteArray(), isWhole);
  }

  /** What could be read; if that is not whole, its end is missing. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Gathered(byte[] octets, boolean isWhole) {}
}
