package steadypull.store.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The pages of a database file, those of its write-ahead log before its own. Pages count from 1.
 * One thread at a time.
 */
public final class DatabasePages implements AutoCloseable {
  static final int LEAST_PAGE_OCTETS = 512;

  /** What SQLite makes unless told otherwise; a library never was. */
  private static final int USUAL_PAGE_OCTETS = 4096;

  /** Section 1.3.1: what every file begins with, a zero at its end. */
  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private final FileChannel file;
  private final WriteAheadLog log;
  private final int pageOctets;
  private final int pageCount;

  private DatabasePages(FileChannel file, WriteAheadLog log) throws IOException {
    this.file = file;
    this.log = log;
    this.pageOctets = log.pageOctets() > 0 ? log.pageOctets() : toldPageOctets(file);
    long inFile = (file.size() + pageOctets - 1) / pageOctets;
    this.pageCount = (int) Math.min(Math.max(inFile, log.pageCount()), Integer.MAX_VALUE);
  }

  /**
   * Opens a database.
   *
   * @param log its write-ahead log, which need not be there
   */
  public static DatabasePages open(Path file, Path log) throws IOException {
    WriteAheadLog ahead = WriteAheadLog.read(log);
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
    try {
      return new DatabasePages(channel, ahead);
    } catch (IOException e) {
      channel.close();
      throw e;
    }
  }

  /**
   * Tells every row that can be read, page after page; rows of free pages are left out where the
   * list of free pages can be read.
   *
   * @throws UncheckedIOException if the disk does not answer
   */
  public void forEachRow(Consumer<FoundRow> rows) {
    BitSet free = FreePages.of(this);
    for (int number = 1; has(number); number++) {
      if (!free.get(number)) {
        PageCells.of(this, number).ifPresent(cells -> tell(cells, rows));
      }
    }
  }

  /** Reads a row again. */
  public Optional<FoundRow> row(FoundRow.Place place) {
    return PageCells.of(this, place.page()).flatMap(cells -> cells.row(place.cell()));
  }

  @Override
  public void close() throws IOException {
    file.close();
  }

  boolean has(int number) {
    return number > 0 && number <= pageCount;
  }

  /** The whole page; what lies beyond the end of the file is zeros. */
  byte[] page(int number) {
    return log.page(number).orElseGet(() -> readPage(number));
  }

  /** Octets of a page that are used; a library keeps none back. */
  int usableOctets() {
    return pageOctets;
  }

  long octets() {
    return (long) pageCount * pageOctets;
  }

  private static void tell(PageCells cells, Consumer<FoundRow> rows) {
    int count = cells.count();
    for (int cell = 0; cell < count; cell++) {
      cells.row(cell).ifPresent(rows);
    }
  }

  private byte[] readPage(int number) {
    ByteBuffer page = ByteBuffer.allocate(pageOctets);
    try {
      fill(file, page, (number - 1L) * pageOctets);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return page.array();
  }

  private static void fill(FileChannel file, ByteBuffer page, long from) throws IOException {
    int read = 0;
    while (page.hasRemaining() && read >= 0) {
      read = file.read(page, from + page.position());
    }
  }

  /** Section 1.3.2: a power of two from 512, where 1 stands for 65536. */
  private static int toldPageOctets(FileChannel file) throws IOException {
    ByteBuffer head = ByteBuffer.allocate(MAGIC.length + 2);
    fill(file, head, 0);
    if (!Arrays.equals(MAGIC, Arrays.copyOf(head.array(), MAGIC.length))) {
      return USUAL_PAGE_OCTETS;
    }
    int octets = head.getShort(MAGIC.length) & 0xFFFF;
    return octets == 1 ? 1 << 16 : Math.max(Integer.highestOneBit(octets), LEAST_PAGE_OCTETS);
  }
}
