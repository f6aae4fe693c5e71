package steadypull.store.page;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the write-ahead log holds in place of the file's own pages (section 4): frames, each with a
 * check over all before, counted up to the last that ends a transaction.
 */
final class WriteAheadLog {
  private static final int HEADER_OCTETS = 32;
  private static final int FRAME_HEADER_OCTETS = 24;
  private static final int MAGIC = 0x377F0682;

  private final ByteBuffer log;
  private final int pageOctets;
  private final Map<Integer, Integer> pageStarts = new HashMap<>();
  private int pageCount;

  private WriteAheadLog(byte[] log) {
    this.log = ByteBuffer.wrap(log);
    this.pageOctets = log.length < HEADER_OCTETS ? 0 : this.log.getInt(8);
  }

  /** Reads the log; one that is not there or not whole from its beginning holds nothing. */
  static WriteAheadLog read(Path file) throws IOException {
    WriteAheadLog log =
        new WriteAheadLog(Files.exists(file) ? Files.readAllBytes(file) : new byte[0]);
    if (log.hasHeader()) {
      log.readFrames();
    }
    return log;
  }

  /** Octets of a page, or 0 if the log holds none. */
  int pageOctets() {
    return pageCount == 0 ? 0 : pageOctets;
  }

  /** How many pages the database has after the last transaction of the log; 0: not told. */
  int pageCount() {
    return pageCount;
  }

  Optional<byte[]> page(int number) {
    Integer start = pageStarts.get(number);
    return start == null
        ? Optional.empty()
        : Optional.of(Arrays.copyOfRange(log.array(), start, start + pageOctets));
  }

  private boolean hasHeader() {
    return log.capacity() >= HEADER_OCTETS
        && (log.getInt(0) & ~1) == MAGIC
        && Integer.bitCount(pageOctets) == 1
        && pageOctets >= DatabasePages.LEAST_PAGE_OCTETS;
  }

  private void readFrames() {
    // Section 4.2: the last bit of the magic number tells the order of octets of the checks.
    ByteOrder order = (log.getInt(0) & 1) == 1 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    Check check = new Check(log.duplicate().order(order));
    check.add(0, 24);
    if (!check.isTold(24)) {
      return;
    }
    Map<Integer, Integer> sinceCommit = new HashMap<>();
    int size = FRAME_HEADER_OCTETS + pageOctets;
    for (int frame = HEADER_OCTETS; frame + size <= log.capacity(); frame += size) {
      check.add(frame, 8);
      check.add(frame + FRAME_HEADER_OCTETS, pageOctets);
      // A frame of an earlier use of the log has other salts (section 4.1).
      if (log.getLong(frame + 8) != log.getLong(16) || !check.isTold(frame + 16)) {
        return;
      }
      sinceCommit.put(log.getInt(frame), frame + FRAME_HEADER_OCTETS);
      int pagesAfterCommit = log.getInt(frame + 4);
      if (pagesAfterCommit > 0) {
        pageStarts.putAll(sinceCommit);
        sinceCommit.clear();
        pageCount = pagesAfterCommit;
      }
    }
  }

  /** Section 4.2, "Checksum Algorithm". */
  private static final class Check {
    private final ByteBuffer log;
    private int first;
    private int second;

    Check(ByteBuffer log) {
      this.log = log;
    }

    void add(int from, int octets) {
      for (int at = from; at < from + octets; at += 8) {
        first += log.getInt(at) + second;
        second += log.getInt(at + 4) + first;
      }
    }

    /** The check itself is always big-endian. */
    boolean isTold(int at) {
      ByteBuffer told = log.duplicate();
      return told.getInt(at) == first && told.getInt(at + 4) == second;
    }
  }
}
