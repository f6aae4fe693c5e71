package steadypull.store.page;

import java.util.Optional;

/** The cells of one page (section 1.6): a header, pointers to the cells, the cells. */
final class PageCells {
  /** The first page begins with the header of the file (section 1.3). */
  private static final int FILE_HEADER_OCTETS = 100;

  private static final int CELL_COUNT_AT = 3;
  private static final int POINTER_OCTETS = 2;

  private final DatabasePages pages;
  private final int number;
  private final byte[] page;
  private final PageKind kind;

  private PageCells(DatabasePages pages, int number, byte[] page, PageKind kind) {
    this.pages = pages;
    this.number = number;
    this.page = page;
    this.kind = kind;
  }

  /** The cells of a page, or empty if no rows can lie there. */
  static Optional<PageCells> of(DatabasePages pages, int number) {
    byte[] page = pages.page(number);
    return PageKind.of(page[start(number)]).map(kind -> new PageCells(pages, number, page, kind));
  }

  private static int start(int number) {
    return number == 1 ? FILE_HEADER_OCTETS : 0;
  }

  int count() {
    try {
      int told = octets(start(number) + CELL_COUNT_AT).unsigned(POINTER_OCTETS);
      return Math.min(told, (pages.usableOctets() - kind.headerOctets()) / POINTER_OCTETS);
    } catch (DamagedPageException e) {
      // The page is shorter than its header: there are no cells.
      return 0;
    }
  }

  /** The row of a cell, or empty if the cell holds none. */
  Optional<FoundRow> row(int cell) {
    try {
      int pointer = start(number) + kind.headerOctets() + cell * POINTER_OCTETS;
      Octets octets = octets(octets(pointer).unsigned(POINTER_OCTETS) + kind.leftOctets());
      long payload = octets.varint();
      long key = kind == PageKind.TABLE_LEAF ? octets.varint() : 0;
      if (payload < 1 || payload > pages.octets()) {
        return Optional.empty();
      }
      Payload.Gathered gathered = new Payload(pages).read(payload, kind, octets);
      return Optional.of(
          new FoundRow(
              new FoundRow.Place(number, kind, cell),
              key,
              RowRecord.decode(gathered.octets(), gathered.isWhole())));
    } catch (DamagedPageException e) {
      // What was overwritten holds no row; the other cells of the page may.
      return Optional.empty();
    }
  }

  private Octets octets(int from) throws DamagedPageException {
    return new Octets(page, from, pages.usableOctets());
  }
}
