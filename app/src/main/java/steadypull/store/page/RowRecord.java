package steadypull.store.page;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The record format (section 2.1): types in a header, then the values. */
final class RowRecord {
  private static final int MOST_COLUMNS = 100;

  private RowRecord() {}

  /**
   * Decodes.
   *
   * @param payload as much of it as could be read
   * @param isWhole whether nothing is missing at its end
   * @throws DamagedPageException if that is no record, or not even its header can be read
   */
  static List<Value> decode(byte[] payload, boolean isWhole) throws DamagedPageException {
    Octets lengths = new Octets(payload, 0, payload.length);
    long headerOctets = lengths.varint();
    if (headerOctets > payload.length) {
      throw new DamagedPageException("a header longer than the record");
    }
    Octets types = new Octets(payload, lengths.at(), (int) headerOctets);
    Octets body = new Octets(payload, (int) headerOctets, payload.length);
    List<Value> values = new ArrayList<>();
    boolean isReadable = true;
    while (types.remaining() > 0) {
      long type = types.varint();
      requireType(type);
      isReadable &= isWhole || octets(type) <= body.remaining();
      values.add(isReadable ? value(type, body) : new Value.Unreadable());
      if (values.size() > MOST_COLUMNS) {
        throw new DamagedPageException("more columns than any table has");
      }
    }
    if (isWhole && body.remaining() > 0) {
      throw new DamagedPageException("a record longer than its values");
    }
    return values;
  }

  private static void requireType(long type) throws DamagedPageException {
    if (type < 0 || type == 10 || type == 11) {
      throw new DamagedPageException("a type that no value has");
    }
  }

  private static Value value(long type, Octets body) throws DamagedPageException {
    return switch ((int) Math.min(type, 12)) {
      case 0 -> new Value.Nothing();
      case 1, 2, 3, 4, 5, 6 -> new Value.Whole(body.signed((int) octets(type)));
      case 7 -> new Value.Real(Double.longBitsToDouble(body.signed(8)));
      case 8, 9 -> new Value.Whole(type - 8);
      case 12 -> type % 2 == 0 ? bytes(type, body) : text(type, body);
      default -> throw new DamagedPageException("a type that no value has");
    };
  }

  private static Value bytes(long type, Octets body) throws DamagedPageException {
    return new Value.Bytes(body.take(octetCount(type)));
  }

  private static Value text(long type, Octets body) throws DamagedPageException {
    ByteBuffer encoded = ByteBuffer.wrap(body.take(octetCount(type)));
    try {
      return new Value.Text(StandardCharsets.UTF_8.newDecoder().decode(encoded).toString());
    } catch (CharacterCodingException e) {
      throw new DamagedPageException("a text that is no UTF-8");
    }
  }

  private static int octetCount(long type) throws DamagedPageException {
    long octets = octets(type);
    if (octets > Integer.MAX_VALUE) {
      throw new DamagedPageException("a value longer than any file");
    }
    return (int) octets;
  }

  private static long octets(long type) {
    if (type >= 12) {
      return (type - 12) / 2;
    }
    return switch ((int) type) {
      case 1, 2, 3, 4 -> type;
      case 5 -> 6;
      case 6, 7 -> 8;
      default -> 0;
    };
  }
}
