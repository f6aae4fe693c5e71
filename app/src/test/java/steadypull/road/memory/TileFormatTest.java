package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;

class TileFormatTest {
  private static final TileKey KEY = new TileKey(970, 1240);

  @Test
  void whatIsEncodedIsDecodedToTheLastStep() throws Exception {
    for (long seed = 0; seed < 200; seed++) {
      Tile tile = tile(new Random(seed));
      byte[] octets = TileFormat.encode(KEY, tile);
      Tile back = TileFormat.decode(KEY, octets);

      assertThat(TileFormat.encode(KEY, back)).as("seed %d", seed).isEqualTo(octets);
      assertThat(back.extras).isEqualTo(tile.extras);
      assertThat(Arrays.copyOf(back.grade, back.size))
          .isEqualTo(Arrays.copyOf(tile.grade, tile.size));
      assertThat(Arrays.copyOf(back.linkTo, back.size))
          .isEqualTo(Arrays.copyOf(tile.linkTo, tile.size));
    }
  }

  /**
   * Put together by hand: one node at 41.5 S 118 W, up 5 % with 0.4 %, 2.5 m, 3 passes, day 20 000,
   * no link.
   */
  @Test
  void theLayoutIsTheOneThatIsWrittenDown() throws Exception {
    Tile tile = new Tile();
    int node = tile.grow();
    tile.latitudeMicros[node] = -41_500_000;
    tile.longitudeMicros[node] = -118_000_000;
    tile.grade[node] = 5000;
    tile.gradeError[node] = 400;
    tile.placeError[node] = 5;
    tile.passes[node] = 3;
    tile.day[node] = 20_000;
    byte[] content =
        HexFormat.of()
            .parseHex(
                "53505201" // SPR, form 1
                    + "ca07" // row 970 = 7 * 128 + 74
                    + "d809" // column 1240 = 9 * 128 + 88
                    + "01" // a node
                    + "00" // no extra link
                    + "9003" // 400 = 3 * 128 + 16
                    + "bff5c927" // -41 500 000 -> 82 999 999
                    + "ffa5c470" // -118 000 000 -> 235 999 999
                    + "904e" // 5000 -> 10 000 = 78 * 128 + 16
                    + "05"
                    + "03"
                    + "c0b802" // 20 000 -> 40 000 = (2 * 128 + 56) * 128 + 64
                    + "00");

    byte[] octets = TileFormat.encode(KEY, tile);
    assertThat(Arrays.copyOf(octets, octets.length - 4)).isEqualTo(content);
  }

  @Test
  void everyFlippedBitIsRefused() {
    byte[] octets = TileFormat.encode(KEY, tile(new Random(5)));
    for (int bit = 0; bit < octets.length * 8; bit++) {
      byte[] flipped = octets.clone();
      flipped[bit / 8] ^= (byte) (1 << (bit % 8));
      assertRefused(flipped);
    }
  }

  @Test
  void everyCutIsRefused() {
    byte[] octets = TileFormat.encode(KEY, tile(new Random(6)));
    for (int length = 0; length < octets.length; length++) {
      assertRefused(Arrays.copyOf(octets, length));
    }
  }

  /** Whoever can compute a check sum must not get further than the bounds of each number. */
  @Test
  void lawlessContentWithARightCheckSumIsRefusedOrHarmless() {
    Random random = new Random(7);
    byte[] octets = TileFormat.encode(KEY, tile(random));
    int refused = 0;
    for (int attempt = 0; attempt < 20_000; attempt++) {
      byte[] forged = octets.clone();
      for (int change = 0; change <= random.nextInt(4); change++) {
        forged[random.nextInt(forged.length - 4)] = (byte) random.nextInt(256);
      }
      try {
        Tile tile = TileFormat.decode(KEY, sealed(forged));
        assertThat(tile.size).isLessThan(forged.length);
      } catch (DamagedTileException expected) {
        refused++;
      }
    }
    assertThat(refused).isGreaterThan(1000);
  }

  @Test
  void theMessageSaysWhatWasTriedExpectedFoundAndWhatToDo() {
    byte[] octets = TileFormat.encode(KEY, tile(new Random(8)));
    octets[9]++;

    assertThatThrownBy(() -> TileFormat.decode(KEY, octets))
        .hasMessageContaining("tile 970/1240")
        .hasMessageContaining("expected the check sum ")
        .hasMessageContaining("found ")
        .hasMessageContaining("Forget the roads around that place");
  }

  @Test
  void aTileOfAnotherPlaceIsRefused() {
    byte[] octets = TileFormat.encode(KEY, tile(new Random(9)));

    assertThatThrownBy(() -> TileFormat.decode(new TileKey(970, 1241), octets))
        .isInstanceOf(DamagedTileException.class)
        .hasMessageContaining("this tile and no other");
  }

  private static void assertRefused(byte[] octets) {
    assertThatThrownBy(() -> TileFormat.decode(KEY, octets))
        .isInstanceOf(DamagedTileException.class);
  }

  private static byte[] sealed(byte[] octets) {
    CRC32C check = new CRC32C();
    check.update(octets, 0, octets.length - 4);
    for (int octet = 0; octet < 4; octet++) {
      octets[octets.length - 4 + octet] = (byte) (check.getValue() >>> (8 * octet));
    }
    return octets;
  }

  private static Tile tile(Random random) {
    Tile tile = new Tile();
    int size = 1 + random.nextInt(60);
    for (int i = 0; i < size; i++) {
      int node = tile.grow();
      tile.latitudeMicros[node] = -41_500_000 + random.nextInt(50_000);
      tile.longitudeMicros[node] = -118_000_000 + random.nextInt(50_000);
      tile.grade[node] = (short) (random.nextGaussian() * 4000);
      tile.gradeError[node] = (short) (1 + random.nextInt(65_535));
      tile.placeError[node] = (byte) (1 + random.nextInt(255));
      tile.passes[node] = (short) random.nextInt(Short.MAX_VALUE);
      tile.day[node] = (short) random.nextInt(65_536);
    }
    for (int i = 0; i < size; i++) {
      tile.link(i, random.nextInt(9), random.nextInt(size), random.nextInt(5));
      if (random.nextInt(5) == 0) {
        tile.link(i, random.nextInt(9), random.nextInt(size), random.nextInt(5));
      }
      if (random.nextInt(9) == 0) {
        tile.wipe(i);
      }
    }
    return tile;
  }
}
