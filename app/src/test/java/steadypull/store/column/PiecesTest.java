package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Pieces are read with those wanted next, unpacked on every core, and kept by their numbers. */
class PiecesTest {
  private static final int DAMAGED = 7;
  private static final int MOST_AT_ONCE = 5;

  private final List<String> reads = new ArrayList<>();
  private final List<String> heard = new ArrayList<>();

  @Test
  void aPieceIsReadWithThoseWantedNextAndNotAgain() {
    Pieces<Integer> pieces = pieces(1000);
    for (int number = 0; number < 4; number++) {
      assertThat(pieces.find(number, between(0, 4))).isEqualTo(10 * number);
    }

    assertThat(reads).containsExactly("0-4");
  }

  @Test
  void noMoreAreReadAtOnceThanAllowed() {
    Pieces<Integer> pieces = pieces(1000);
    for (int number = 10; number < 22; number++) {
      assertThat(pieces.find(number, between(10, 22))).isEqualTo(10 * number);
    }

    assertThat(reads).containsExactly("10-15", "15-20", "20-22");
  }

  @Test
  void whatIsKeptOrNotWantedIsNotReadAlong() {
    Pieces<Integer> pieces = pieces(1000);
    pieces.find(2, between(2, 3));
    pieces.find(0, between(0, 5));
    pieces.find(3, new BitSet());

    assertThat(reads).containsExactly("2-3", "0-2", "3-4");
  }

  @Test
  void aDamagedPieceIsToldAndNeitherStopsTheOthersNorIsReadAgain() {
    Pieces<Integer> pieces = pieces(1000);
    for (int round = 0; round < 2; round++) {
      assertThat(pieces.find(6, between(6, 9))).isEqualTo(60);
      assertThat(pieces.find(DAMAGED, between(6, 9))).isNull();
      assertThat(pieces.find(8, between(6, 9))).isEqualTo(80);
    }

    assertThat(reads).containsExactly("6-9");
    assertThat(pieces.damaged()).isEqualTo(between(DAMAGED, DAMAGED + 1));
  }

  @Test
  void whatIsKeptHasAnEndAndIsReadAgain() {
    Pieces<Integer> pieces = pieces(2);
    for (int round = 0; round < 2; round++) {
      for (int number = 0; number < 5; number++) {
        assertThat(pieces.find(number, between(0, 5))).isEqualTo(10 * number);
      }
    }

    assertThat(reads).containsExactly("0-5", "0-3", "3-5");
  }

  @Test
  void whatIsReadAheadIsNotReadAgain() {
    Pieces<Integer> pieces = pieces(1000);
    pieces.find(1, between(1, 2));
    assertThat(pieces.readAhead(between(0, 9), 6).cardinality()).isEqualTo(6);
    for (int number = 0; number < 9; number++) {
      Integer expected = number == DAMAGED ? null : Integer.valueOf(10 * number);
      assertThat(pieces.find(number, between(0, 9))).isEqualTo(expected);
    }

    assertThat(reads).containsExactly("1-2", "0-1", "2-7", "7-9");
    assertThat(pieces.damaged()).isEqualTo(between(DAMAGED, DAMAGED + 1));
  }

  @Test
  void readingAheadFinishesTheStepBeforeAndEnds() {
    Pieces<Integer> pieces = pieces(1000);
    assertThat(pieces.readAhead(between(5, 9), 3)).isEqualTo(between(5, 8));
    assertThat(heard).isEmpty();
    assertThat(pieces.readAhead(between(5, 9), 3)).isEqualTo(between(8, 9));
    assertThat(heard).containsExactlyInAnyOrder("5:50", "6:60", "7:null");
    assertThat(pieces.readAhead(between(5, 9), 3).isEmpty()).isTrue();
    assertThat(pieces.findKept(8)).isEqualTo(80);
    assertThat(pieces.findKept(DAMAGED)).isNull();
    assertThat(reads).containsExactly("5-8", "8-9");
  }

  @Test
  void whatIsLookedAtIsHeardOfAndNotKept() {
    Pieces<Integer> pieces = pieces(1000);
    pieces.look(3);
    pieces.look(DAMAGED);

    assertThat(heard).containsExactly("3:30", DAMAGED + ":null");
    assertThat(pieces.findKept(3)).isNull();
  }

  @Test
  void whatWasLeftIsReadAnewByWhoAsksForIt() {
    Pieces<Integer> pieces = pieces(1000);
    pieces.readAhead(between(0, 4), 4);
    pieces.leave();
    assertThat(pieces.find(2, between(2, 3))).isEqualTo(20);
    assertThat(reads).containsExactly("0-4", "2-3");
  }

  /** Pieces that take one octet each. */
  private Pieces<Integer> pieces(int mostOctets) {
    return new Pieces<>(
        this::read,
        PiecesTest::unpack,
        (number, piece) -> heard.add(number + ":" + piece),
        MOST_AT_ONCE,
        mostOctets);
  }

  private List<byte[]> read(int from, int to) {
    reads.add(from + "-" + to);
    return IntStream.range(from, to).mapToObj(number -> new byte[] {(byte) number}).toList();
  }

  private static Pieces.Piece<Integer> unpack(byte[] bytes) throws DamagedSegmentException {
    if (bytes[0] == DAMAGED) {
      throw new DamagedSegmentException("a whole piece", "a damaged one");
    }
    return new Pieces.Piece<>(10 * bytes[0], 1);
  }

  private static BitSet between(int from, int to) {
    BitSet numbers = new BitSet();
    numbers.set(from, to);
    return numbers;
  }
}
