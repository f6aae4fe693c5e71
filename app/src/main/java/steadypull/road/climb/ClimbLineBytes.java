package steadypull.road.climb;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32C;

/**
 * A climb's line in octets, some four for each vertex. Stateless.
 *
 * <p>Layout: one octet with the form's number, 1; then for each vertex its latitude and longitude
 * in millionths of a degree less those of the vertex before (0 before the first), each as a signed
 * number whose sign went into its lowest bit, in groups of seven bits, lowest first, the highest
 * bit of an octet set if more follow (base 128 varint, zigzag); last the CRC-32C of all octets
 * before, four octets, highest first.
 */
public final class ClimbLineBytes {
  private static final byte FORM = 1;
  private static final int CHECK_OCTETS = 4;
  private static final double MILLION = 1e6;

  /** A line of this many octets has ten thousand vertices; none is as long. */
  private static final int MOST_OCTETS = 64 * 1024;

  private ClimbLineBytes() {}

  /** Writes a line. */
  public static byte[] encode(ClimbLine line) {
    ByteArrayOutputStream octets = new ByteArrayOutputStream();
    octets.write(FORM);
    long latitude = 0;
    long longitude = 0;
    for (ClimbLine.Vertex vertex : line.vertices()) {
      long north = Math.round(vertex.latitudeDegrees() * MILLION);
      long east = Math.round(vertex.longitudeDegrees() * MILLION);
      put(octets, north - latitude);
      put(octets, east - longitude);
      latitude = north;
      longitude = east;
    }
    byte[] body = octets.toByteArray();
    return ByteBuffer.allocate(body.length + CHECK_OCTETS).put(body).putInt(check(body)).array();
  }

  /**
   * Reads a line back, to the millionth of a degree.
   *
   * @throws IllegalArgumentException if the octets are no line, with what was expected and found
   */
  public static ClimbLine decode(byte[] octets) {
    if (octets.length <= CHECK_OCTETS || octets.length > MOST_OCTETS) {
      throw damaged("5 to " + MOST_OCTETS + " octets", octets.length + " octets");
    }
    byte[] body = Arrays.copyOf(octets, octets.length - CHECK_OCTETS);
    int told = ByteBuffer.wrap(octets).getInt(body.length);
    if (told != check(body)) {
      throw damaged("a check of %08x".formatted(check(body)), "%08x".formatted(told));
    }
    if (body[0] != FORM) {
      throw damaged("form " + FORM, "form " + body[0]);
    }
    return line(ByteBuffer.wrap(body, 1, body.length - 1));
  }

  private static ClimbLine line(ByteBuffer body) {
    List<ClimbLine.Vertex> vertices = new ArrayList<>();
    long latitude = 0;
    long longitude = 0;
    while (body.hasRemaining()) {
      latitude += take(body);
      longitude += take(body);
      vertices.add(new ClimbLine.Vertex(latitude / MILLION, longitude / MILLION));
    }
    return new ClimbLine(vertices);
  }

  private static void put(ByteArrayOutputStream octets, long signed) {
    long rest = (signed << 1) ^ (signed >> 63);
    while (rest >= 0x80) {
      octets.write((int) (rest & 0x7f) | 0x80);
      rest >>>= 7;
    }
    octets.write((int) rest);
  }

  private static long take(ByteBuffer octets) {
    long folded = 0;
    for (int shift = 0; shift < 35; shift += 7) {
      if (!octets.hasRemaining()) {
        throw damaged("another octet of a number", "the end");
      }
      byte next = octets.get();
      folded |= (long) (next & 0x7f) << shift;
      if (next >= 0) {
        return (folded >>> 1) ^ -(folded & 1);
      }
    }
    throw damaged("a number of five octets at most", "a longer one");
  }

  private static int check(byte[] body) {
    CRC32C check = new CRC32C();
    check.update(body);
    return (int) check.getValue();
  }

  private static IllegalArgumentException damaged(String expected, String found) {
    return new IllegalArgumentException(
        "Could not read the line of a climb: expected %s, found %s. The climb is learnt anew when it"
                .formatted(expected, found)
            + " is driven again.");
  }
}
