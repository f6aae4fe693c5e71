package steadypull.road.memory;

import java.util.zip.CRC32C;

/**
 * A tile in octets. Whole numbers are written as {@link TileWriter} does.
 *
 * <ul>
 *   <li>"SPR" and the form, one octet, 1
 *   <li>row, column, number of nodes, number of extra links
 *   <li>each node: error of its grade in 0.001 %, 0 for a wiped one, of which nothing more follows;
 *       latitude and longitude in 1e-6 degrees and grade in 0.001 %, each as the difference to the
 *       node before; error of its place in 0.5 m; passes; day as the difference to the node before;
 *       its first link: 0 for none, else 1 and the step to its tile (0 to 8, south-west to
 *       north-east, 4 the same) and, as the difference to its own index, the index there; its count
 *   <li>each extra link: index, step, index there, count
 *   <li>CRC-32C of all before, four octets, lowest first
 * </ul>
 */
final class TileFormat {
  private static final int FORM = 1;
  private static final byte[] LETTERS = {'S', 'P', 'R'};
  private static final int CHECK_OCTETS = 4;
  private static final int FARTHEST_NORTH = 90_000_000;
  private static final int FARTHEST_EAST = 180_000_000;

  /** A wiped node takes one octet, any other more. */
  private static final int FEWEST_OCTETS = 1;

  private TileFormat() {}

  static byte[] encode(TileKey key, Tile tile) {
    TileWriter out = new TileWriter();
    for (byte letter : LETTERS) {
      out.octet(letter);
    }
    out.octet(FORM);
    out.unsigned(key.row());
    out.unsigned(key.column());
    out.unsigned(tile.size);
    out.unsigned(tile.extras.size());
    int before = -1;
    for (int index = 0; index < tile.size; index++) {
      out.unsigned(tile.gradeError[index] & 0xFFFF);
      if (tile.isKnown(index)) {
        node(out, tile, index, before);
        before = index;
      }
    }
    for (Tile.Extra extra : tile.extras) {
      out.unsigned(extra.from());
      out.octet(extra.step());
      out.unsigned(extra.to());
      out.unsigned(extra.count());
    }
    return checked(out);
  }

  private static void node(TileWriter out, Tile tile, int index, int before) {
    boolean isFirst = before < 0;
    out.signed(tile.latitudeMicros[index] - (isFirst ? 0L : tile.latitudeMicros[before]));
    out.signed(tile.longitudeMicros[index] - (isFirst ? 0L : tile.longitudeMicros[before]));
    out.signed(tile.grade[index] - (isFirst ? 0L : tile.grade[before]));
    out.unsigned(tile.placeError[index] & 0xFF);
    out.unsigned(tile.passes[index]);
    out.signed((tile.day[index] & 0xFFFF) - (isFirst ? 0L : tile.day[before] & 0xFFFF));
    if (tile.linkTo[index] == Tile.NO_LINK) {
      out.octet(0);
    } else {
      out.octet(1 + tile.linkStep[index]);
      out.signed((long) tile.linkTo[index] - index);
      out.unsigned(tile.linkCount[index]);
    }
  }

  private static byte[] checked(TileWriter out) {
    byte[] content = out.octets();
    int check = check(content, content.length);
    for (int octet = 0; octet < CHECK_OCTETS; octet++) {
      out.octet(check >>> (8 * octet));
    }
    return out.octets();
  }

  private static int check(byte[] octets, int length) {
    CRC32C check = new CRC32C();
    check.update(octets, 0, length);
    return (int) check.getValue();
  }

  static Tile decode(TileKey key, byte[] octets) throws DamagedTileException {
    int end = octets.length - CHECK_OCTETS;
    requireWhole(key, octets, end);
    TileReader in = new TileReader(key, octets, end);
    for (byte letter : LETTERS) {
      require(key, in.octet() == letter, "a tile's first letters");
    }
    require(key, in.octet() == FORM, "form " + FORM + " of a tile");
    require(
        key,
        in.unsigned(0, TileKey.ROWS, "a row") == key.row()
            && in.unsigned(0, TileKey.COLUMNS, "a column") == key.column(),
        "this tile and no other");
    Tile tile = new Tile();
    int size = in.unsigned(0, Tile.MOST_NODES, "a number of nodes");
    int extras = in.unsigned(0, Tile.MOST_NODES, "a number of links");
    require(
        key,
        size + (long) extras <= in.remaining() / FEWEST_OCTETS,
        "as many octets as nodes and links");
    tile.resize(size);
    int before = -1;
    for (int index = 0; index < size; index++) {
      tile.grow();
      tile.gradeError[index] = (short) in.unsigned(0, 65_535, "an error of a grade");
      if (tile.isKnown(index)) {
        node(in, tile, index, before);
        before = index;
      }
    }
    extras(in, tile, extras);
    in.requireEnd();
    return tile;
  }

  private static void node(TileReader in, Tile tile, int index, int before)
      throws DamagedTileException {
    boolean isFirst = before < 0;
    tile.latitudeMicros[index] =
        in.from(
            isFirst ? 0 : tile.latitudeMicros[before],
            -FARTHEST_NORTH,
            FARTHEST_NORTH,
            "a latitude");
    tile.longitudeMicros[index] =
        in.from(
            isFirst ? 0 : tile.longitudeMicros[before],
            -FARTHEST_EAST,
            FARTHEST_EAST,
            "a longitude");
    tile.grade[index] =
        (short) in.from(isFirst ? 0 : tile.grade[before], -32_767, 32_767, "a grade");
    tile.placeError[index] = (byte) in.unsigned(1, 255, "an error of a place");
    tile.passes[index] = (short) in.unsigned(0, Short.MAX_VALUE, "a number of passes");
    tile.day[index] = (short) in.from(isFirst ? 0 : tile.day[before] & 0xFFFF, 0, 65_535, "a day");
    int step = in.unsigned(0, 9, "a step") - 1;
    if (step >= 0) {
      tile.linkStep[index] = (byte) step;
      tile.linkTo[index] = in.from(index, 0, Tile.MOST_NODES - 1, "a link");
      tile.linkCount[index] = (short) in.unsigned(0, Short.MAX_VALUE, "a count");
    }
  }

  private static void extras(TileReader in, Tile tile, int extras) throws DamagedTileException {
    for (int i = 0; i < extras; i++) {
      int from = in.unsigned(0, tile.size - 1L, "a link's node");
      int step = in.unsigned(0, 8, "a step");
      int to = in.unsigned(0, Tile.MOST_NODES - 1, "a link");
      tile.extras.add(new Tile.Extra(from, step, to, in.unsigned(0, Short.MAX_VALUE, "a count")));
    }
  }

  private static void requireWhole(TileKey key, byte[] octets, int end)
      throws DamagedTileException {
    require(key, end > LETTERS.length, "more than " + CHECK_OCTETS + " octets");
    int told = 0;
    for (int octet = 0; octet < CHECK_OCTETS; octet++) {
      told |= (octets[end + octet] & 0xFF) << (8 * octet);
    }
    int found = check(octets, end);
    if (told != found) {
      throw new DamagedTileException(
          key,
          "the check sum %08X of its octets".formatted(told),
          "%08X; they are not what was saved".formatted(found));
    }
  }

  private static void require(TileKey key, boolean holds, String expected)
      throws DamagedTileException {
    if (!holds) {
      throw new DamagedTileException(key, expected, "something else");
    }
  }
}
