package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is kept of a long trip has an end. */
class UnpackedTest {
  @Test
  void whatWasUsedLongestAgoGoesFirst() {
    Unpacked<String> kept = new Unpacked<>(100);
    kept.keep(1, "one", 40);
    kept.keep(2, "two", 40);
    assertThat(kept.find(1)).isEqualTo("one");
    kept.keep(3, "three", 40);

    assertThat(kept.find(2)).isNull();
    assertThat(kept.find(1)).isEqualTo("one");
    assertThat(kept.find(3)).isEqualTo("three");
  }

  @Test
  void aPieceThatIsTooBigIsKeptAlone() {
    Unpacked<String> kept = new Unpacked<>(100);
    kept.keep(1, "one", 40);
    kept.keep(2, "big", 400);
    assertThat(kept.find(2)).isEqualTo("big");
    assertThat(kept.find(1)).isNull();

    kept.keep(3, "three", 40);
    assertThat(kept.find(2)).isNull();
  }

  @Test
  void aPieceKeptAgainCountsOnce() {
    Unpacked<String> kept = new Unpacked<>(100);
    for (int round = 0; round < 10; round++) {
      kept.keep(1, "one", 40);
    }
    kept.keep(2, "two", 60);

    assertThat(kept.find(1)).isEqualTo("one");
  }
}
