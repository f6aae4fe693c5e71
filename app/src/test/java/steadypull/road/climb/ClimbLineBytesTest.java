package steadypull.road.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Lines to octets and back. */
class ClimbLineBytesTest {
  /**
   * By hand: form 1; 1.0 degree north is 1000000 millionths, doubled 2000000 = 0x1e8480: groups 00,
   * 09, 7a: 80 89 7a; 2 millionths west are -2, folded 3; then 1 and -64 millionths farther: 2, and
   * 127 = 7f. The check (CRC-32C, RFC 3720 appendix B.4's polynomial) is the JDK's.
   */
  @Test
  void theLayoutIsTheOneThatIsWrittenDown() {
    byte[] octets = ClimbLineBytes.encode(line(1.0, -0.000002, 1.000001, -0.000066));

    assertThat(HexFormat.of().formatHex(Arrays.copyOf(octets, octets.length - 4)))
        .isEqualTo("01" + "80897a" + "03" + "02" + "7f");
  }

  @Test
  void everyLineComesBackToTheMillionth() {
    Random random = new Random(8);
    for (int turn = 0; turn < 200; turn++) {
      List<ClimbLine.Vertex> vertices = new ArrayList<>();
      for (int i = 0; i < 2 + random.nextInt(60); i++) {
        vertices.add(
            ClimbLine.Vertex.rounded(
                180 * random.nextDouble() - 90, 360 * random.nextDouble() - 180));
      }
      ClimbLine line = new ClimbLine(vertices);
      assertThat(ClimbLineBytes.decode(ClimbLineBytes.encode(line))).isEqualTo(line);
    }
  }

  @Test
  void aFlippedBitIsRefused() {
    byte[] octets = ClimbLineBytes.encode(line(-41.5, -118, -41.51, -118.01, -41.52, -118.03));
    for (int bit = 0; bit < octets.length * 8; bit++) {
      byte[] flipped = octets.clone();
      flipped[bit / 8] ^= (byte) (1 << bit % 8);
      assertThatThrownBy(() -> ClimbLineBytes.decode(flipped))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContainingAll("line of a climb", "expected", "found");
    }
  }

  @Test
  void aCutLineIsRefused() {
    byte[] octets = ClimbLineBytes.encode(line(-41.5, -118, -41.51, -118.01));
    for (int length = 0; length < octets.length; length++) {
      byte[] cut = Arrays.copyOf(octets, length);
      assertThatThrownBy(() -> ClimbLineBytes.decode(cut))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  private static ClimbLine line(double... degrees) {
    List<ClimbLine.Vertex> vertices = new ArrayList<>();
    for (int i = 0; i < degrees.length; i += 2) {
      vertices.add(new ClimbLine.Vertex(degrees[i], degrees[i + 1]));
    }
    return new ClimbLine(vertices);
  }
}
