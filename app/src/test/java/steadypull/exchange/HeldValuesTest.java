package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Sample;

/**
 * Tables of an invented logger that polls values in turn and repeats them on the rows between;
 * which rows were fresh is known, because the table was made from them.
 */
class HeldValuesTest {
  private static final int COLUMNS = 5;

  @TempDir private Path folder;
  private ForeignTables tables;

  @BeforeEach
  void inThisFolder() {
    tables = new ForeignTables(folder);
  }

  /** Chance that a poll of each column brings another value; the last two hardly ever change. */
  private static final double[] CHANGES = {0.9, 0.5, 0.1, 0.004, 0};

  private static String toml(String head) {
    StringBuilder toml = new StringBuilder(head);
    toml.append("\n[time]\ncolumn = \"T\"\nformat = \"milliseconds\"\n[columns]\n");
    for (int column = 0; column < COLUMNS; column++) {
      toml.append("C%d = \"own_%d[1]\"\n".formatted(column, column));
    }
    return toml.toString();
  }

  /** Makes a table row by row; {@code isLost} says which rows never reach it. */
  private static String polled(SplittableRandom random, int rows, int from, IntPredicate isLost) {
    StringBuilder table = new StringBuilder("T,C0,C1,C2,C3,C4\n");
    String[] cells = {"", "", "", "", ""};
    for (int row = 0; row < rows; row++) {
      int column = row % COLUMNS;
      if (cells[column].isEmpty() || random.nextDouble() < CHANGES[column]) {
        cells[column] = Integer.toString(random.nextInt(1_000_000));
      }
      if (row >= from && !isLost.test(row)) {
        table.append(row * 90).append(',').append(String.join(",", cells)).append('\n');
      }
    }
    return table.toString();
  }

  private static List<String> found(ForeignTables.Read read) {
    return read.samples().stream().map(HeldValuesTest::word).toList();
  }

  private static String word(Sample sample) {
    return sample.timeMicros() / 90_000 + ":" + sample.channel().id();
  }

  private static List<String> everyPoll(int from, int rows) {
    List<String> polls = new ArrayList<>();
    for (int row = from; row < rows; row++) {
      polls.add(row + ":own_" + row % COLUMNS);
    }
    return polls;
  }

  /** Each row holds one poll, and exactly that one is found, changes or none. */
  @Test
  void aRaggedTableGivesEveryPollAndNoOther() throws Exception {
    for (int seed = 0; seed < 20; seed++) {
      String table = polled(new SplittableRandom(seed), 2_000, 0, row -> false);

      ForeignTables.Read read = tables.read(table, toml("held = true"));

      assertThat(found(read)).as("seed %d", seed).isEqualTo(everyPoll(0, 2_000));
      assertThat(read.table().heldWords())
          .containsExactly(
              "Fresh where the value changes, and every 5 rows: own_0, own_1, own_2, own_3, own_4");
    }
  }

  /**
   * The beginning was cut off: columns that change often enough keep their turn; of the others the
   * first row counts as fresh, since nobody knows how old its values are.
   */
  @Test
  void withoutARaggedBeginningTheTurnIsFoundFromTheChanges() throws Exception {
    String table = polled(new SplittableRandom(3), 2_000, 7, row -> false);

    List<String> found = found(tables.read(table, toml("held = true")));

    assertThat(found)
        .filteredOn(each -> each.matches(".*own_[012]"))
        .isEqualTo(
            everyPoll(7, 2_000).stream().filter(each -> each.matches(".*own_[012]")).toList());
    assertThat(found).filteredOn(each -> each.endsWith("own_4")).hasSize(399);
  }

  /** A row that never reached the file shifts the turn of all; the next change tells. */
  @Test
  void aLostRowShiftsTheTurnOfAll() throws Exception {
    String table = polled(new SplittableRandom(4), 3_000, 0, row -> row == 1_001);

    TreeSet<String> wrong = new TreeSet<>(found(tables.read(table, toml("held = true"))));
    everyPoll(0, 3_000).forEach(wrong::remove);

    // Until the first column that changes: at most a round of rows at their old turn.
    assertThat(wrong).hasSizeLessThanOrEqualTo(COLUMNS);
  }

  /** Rows written by a clock, polls whenever: no turn to be found, and no value fresh too often. */
  @Test
  void whereRowsAndPollsAreApartNothingIsFreshMoreOftenThanItWasPolled() throws Exception {
    SplittableRandom random = new SplittableRandom(5);
    StringBuilder table = new StringBuilder("T,C0,C1,C2,C3,C4\n");
    int polls = 0;
    int nextPoll = 0;
    for (int row = 0; row < 5_000; row++) {
      if (row >= nextPoll) {
        polls++;
        nextPoll = row + random.nextInt(9, 13);
      }
      table.append("%d,%d,%d,1,1,1%n".formatted(row * 90, polls, polls / 3));
    }

    List<String> found = found(tables.read(table.toString(), toml("held = true")));

    assertThat(found).filteredOn(each -> each.endsWith("own_0")).hasSize(polls);
    assertThat(found).filteredOn(each -> each.endsWith("own_4")).hasSizeBetween(polls / 2, polls);
  }

  @Test
  void whereNothingTellsARoundOnlyChangesAreFresh() throws Exception {
    String table = "T,C0,C1,C2,C3,C4\n0,1,1,1,1,1\n90,1,1,1,1,1\n180,1,2,1,1,1\n270,1,2,1,1,1\n";

    ForeignTables.Read read = tables.read(table, toml("held = true"));

    assertThat(found(read))
        .containsExactly("0:own_0", "0:own_1", "0:own_2", "0:own_3", "0:own_4", "2:own_1");
    assertThat(read.table().heldWords())
        .singleElement()
        .asString()
        .contains("Fresh only where the value changes");
  }

  /** A parked vehicle: nothing changes, but values appear one after another. */
  @Test
  void aRaggedBeginningAloneTellsTheRound() throws Exception {
    StringBuilder table = new StringBuilder("T,C0,C1,C2,C3,C4\n0,1,,,,\n90,1,2,,,\n");
    table.append("180,1,2,3,,\n270,1,2,3,4,\n");
    for (int row = 4; row < 20; row++) {
      table.append(row * 90).append(",1,2,3,4,5\n");
    }

    assertThat(found(tables.read(table.toString(), toml("held = true"))))
        .isEqualTo(everyPoll(0, 20));
  }

  @Test
  void theRoundMayBeSaid() throws Exception {
    String table = "T,C0,C1,C2,C3,C4\n0,1,1,1,1,1\n90,1,1,1,1,1\n180,1,1,1,1,1\n";

    assertThat(found(tables.read(table, toml("held = true\nround = 2"))))
        .filteredOn(each -> each.endsWith("own_0"))
        .containsExactly("0:own_0", "2:own_0");
  }

  @Test
  void aColumnMayBeLeftOutOfTheTurn() throws Exception {
    String toml =
        toml("held = true")
            .replace("C4 = \"own_4[1]\"", "C4 = { channel = \"own_4[1]\", held = false }");
    String table = polled(new SplittableRandom(6), 100, 4, row -> false);

    assertThat(found(tables.read(table, toml)))
        .filteredOn(each -> each.endsWith("own_4"))
        .hasSize(96);
  }
}
