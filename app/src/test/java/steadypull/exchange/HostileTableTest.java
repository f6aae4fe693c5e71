package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that want something else than to be read. Each is refused with its place. */
@Execution(ExecutionMode.CONCURRENT)
class HostileTableTest {
  @TempDir private Path folder;

  private Path file(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("hostile.csv"), bytes);
  }

  private Path file(String text) throws IOException {
    return file(text.getBytes(StandardCharsets.UTF_8));
  }

  private static byte[] packed(String text) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(bytes)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toByteArray();
  }

  @Test
  void aMillionColumnsAreRefused() throws Exception {
    Path file = file("time[s]" + ",own[1]".repeat(1_000_000) + "\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("expected at most 4096 fields")
        .satisfies(e -> assertThat(e.toString()).hasSizeLessThan(600));
  }

  @Test
  void aMillionFieldsInARowAreRefused() throws Exception {
    Path file = file("time[s],own[1]\n0,1\n1" + ",2".repeat(1_000_000) + "\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("line 3, column 4097: expected at most 4096 fields, found more.");
  }

  @Test
  void manyUnknownColumnsGiveAShortMessage() throws Exception {
    Path file = file("time[s]" + ",Bogus".repeat(4_000) + "\n0\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("line 1, column 2: expected a header of the form id[unit]")
        .hasMessageContaining("and 3979 more")
        .satisfies(e -> assertThat(e.toString()).hasSizeLessThan(2_000));
  }

  /** A bomb: a thousand times as long once it is unpacked, and no line ever ends. */
  @Test
  void aPackedTableWhoseLineNeverEndsIsReadNoFurtherThanAField() throws Exception {
    Path file = file(packed("time[s],own[1]\n0," + "9".repeat(50_000_000)));
    IncomingTable[] opened = new IncomingTable[1];

    assertThatThrownBy(() -> opened[0] = TripTable.open(file))
        .hasMessageContaining(
            "line 2, column 2: expected a field of at most 16384 characters, found a longer one.")
        .hasMessageContaining("Nothing was taken");
  }

  @Test
  void aHeaderLineWithoutEndIsRefused() throws Exception {
    Path file = file(packed("x".repeat(50_000_000)));

    assertThat(TripTable.headerLine(file)).hasSize(100_000);
    assertThatThrownBy(() -> ImportedTable.read(file)).isInstanceOf(TableException.class);
    assertThatThrownBy(() -> MappingProposal.of(file)).isInstanceOf(TableException.class);
  }

  @Test
  void aPackedTableIsReadByItsContentWhateverItsName() throws Exception {
    Path file = file(packed("time[s],gear[1]\n0,3\n"));

    assertThat(ImportedTable.read(file).samples()).hasSize(1);
  }

  @Test
  void aPackedTableThatBreaksOffIsRefusedWithItsLastLine() throws Exception {
    StringBuilder table = new StringBuilder("time[s],gear[1]\n");
    SplittableRandom random = new SplittableRandom(1);
    for (int row = 0; row < 50_000; row++) {
      table.append(row).append(',').append(random.nextInt()).append('\n');
    }
    byte[] whole = packed(table.toString());
    Path file = file(Arrays.copyOf(whole, whole.length / 2));

    assertThatThrownBy(() -> ImportedTable.read(file))
        .isInstanceOf(TableException.class)
        .hasMessageMatching(
            ".*hostile.csv, after line \\d{4,5}: expected more of the table, found a gzip file that"
                + " breaks off.*Nothing was taken.*");
  }

  @Test
  void aPackedTableWithAFlippedBitIsRefused() throws Exception {
    StringBuilder table = new StringBuilder("time[s],gear[1]\n");
    for (int row = 0; row < 2_000; row++) {
      table.append(row).append(',').append(row * 7919 % 997).append('\n');
    }
    byte[] bytes = packed(table.toString());
    for (int at = 10; at < bytes.length; at += 97) {
      byte[] bad = bytes.clone();
      bad[at] ^= 0x10;
      Path file = file(bad);
      assertThatThrownBy(() -> ImportedTable.read(file))
          .as("bit in byte %d", at)
          .isInstanceOf(TableException.class)
          .hasMessageContaining("hostile.csv");
    }
  }

  /** Members one after another are one file (RFC 1952, section 2.2); anything else is none. */
  @ParameterizedTest
  @ValueSource(
      strings = {"x", "2,5\n", "\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0"})
  void bytesBehindAPackedTableAreRefusedAndFurtherMembersTaken(String behind) throws Exception {
    byte[] table = packed("time[s],gear[1]\n0,3\n");

    assertThat(ImportedTable.read(file(joined(table, packed("1,4\n")))).samples()).hasSize(2);
    assertThatThrownBy(
            () -> ImportedTable.read(file(joined(table, behind.getBytes(StandardCharsets.UTF_8)))))
        .hasMessageContaining("found a damaged gzip file (bytes behind its end). Nothing was");
  }

  private static byte[] joined(byte[] one, byte[] other) {
    byte[] both = Arrays.copyOf(one, one.length + other.length);
    System.arraycopy(other, 0, both, one.length, other.length);
    return both;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=cmd|' /C calc'!A0",
        "+1+1",
        "-2+3",
        "@SUM(A1)",
        "=HYPERLINK(\"\"x\"\")",
        "\t=1",
        "0;=1"
      })
  void formulasAreNeitherCellsNorHeaders(String formula) throws Exception {
    Path asCell = file("time[s],gear[1]\n0,\"" + formula + "\"\n");
    assertThatThrownBy(() -> ImportedTable.read(asCell))
        .hasMessageContaining("line 2, column 2 (gear[1]): expected a number");

    Path asHeader = file("time[s],\"" + formula + "[1]\"\n0,3\n");
    assertThatThrownBy(() -> ImportedTable.read(asHeader))
        .hasMessageContaining("line 1, column 2: expected a header of the form id[unit]");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\0", "1\0", "\u001B[2J", "\u202E1", "1\u00A0000", "\uFEFF1"})
  void strangeCharactersInCellsAreRefusedAndShown(String cell) throws Exception {
    Path file = file("time[s],gear[1]\n0," + cell + "\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("line 2, column 2 (gear[1])")
        .satisfies(e -> assertThat(e.getMessage()).doesNotContainPattern("[\\p{Cntrl}]"));
  }

  @Test
  void nulsInAHeaderAreRefusedAndShown() throws Exception {
    Path file = file("time[s],gear\0[1]\n0,3\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("line 1, column 2")
        .hasMessageContaining("a NUL character in \"gear\\u0000[1]\"");
  }

  @Test
  void controlCharactersInANameDoNotReachTheTerminal() throws Exception {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT)).startsWith("linux");
    Path file = Files.writeString(folder.resolve("a\u001B[2J\nb.csv"), "time[s],gear[1]\n0,x\n");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("a\\u001b[2J\\u000ab.csv, line 2, column 2")
        .satisfies(e -> assertThat(e.getMessage()).doesNotContainPattern("[\\p{Cntrl}]"));
  }

  @Test
  void whatIsNoFileIsRefused() throws Exception {
    assumeThat(System.getProperty("os.name").toLowerCase(Locale.ROOT)).startsWith("linux");

    assertThatThrownBy(() -> ImportedTable.read(folder)).hasMessageContaining("found a folder");
    for (String device : new String[] {"/dev/null", "/dev/zero"}) {
      assertThatThrownBy(() -> ImportedTable.read(Path.of(device)))
          .isInstanceOf(TableException.class)
          .hasMessageContaining(device)
          .hasMessageContaining("found a device or a pipe");
    }
  }

  @Test
  void aSpreadsheetsOwnFileIsRefusedWithWhatToDo() throws Exception {
    Path file = file("PK\u0003\u0004\u0014\u0000");

    assertThatThrownBy(() -> ImportedTable.read(file))
        .hasMessageContaining("hostile.csv: expected a file with a trip table, found an archive")
        .hasMessageContaining("save it as CSV");
  }

  @Test
  void anEmptyFileIsRefusedPlainAndPacked() throws Exception {
    assertThatThrownBy(() -> ImportedTable.read(file("")))
        .hasMessageContaining("line 1: expected a header line time[s],..., found an empty file");
    assertThatThrownBy(() -> ImportedTable.read(file(packed(""))))
        .hasMessageContaining("found an empty file");
    assertThatThrownBy(() -> ImportedTable.read(file("\r\n\r\n")))
        .hasMessageContaining("found an empty file");
    assertThatThrownBy(() -> ImportedTable.read(file(new byte[] {0x1F, (byte) 0x8B})))
        .hasMessageContaining("a gzip file that breaks off");
  }

  /** Whatever the bytes, they are taken or refused with a message; nothing else comes out. */
  @Test
  void noBytesEscapeAsAnotherError() throws Exception {
    String toml =
        """
        separator = ";"
        held = true
        [time]
        column = "T"
        format = "H:mm:ss"
        repeats = true
        [columns]
        V = "vehicle_speed[mph]"
        W = "own[1]"
        """;
    byte[] good =
        packed("T;V;W\r\n9:59:59;1;2\r\n10:00:00;3;\r\n\"23:59:59\";4;-3e2\r\n0:00:01;5;6\r\n");
    byte[] plain =
        "T;V;W\r\n9:59:59;1;2\r\n10:00:00;3;\r\n\"23:59:59\";4;-3e2\r\n"
            .getBytes(StandardCharsets.UTF_8);
    SplittableRandom random = new SplittableRandom(77);
    for (int round = 0; round < 1_000; round++) {
      byte[] bad = (random.nextBoolean() ? good : plain).clone();
      for (int changes = random.nextInt(1, 4); changes > 0; changes--) {
        bad[random.nextInt(bad.length)] = (byte) random.nextInt(256);
      }
      try {
        ForeignTables.read(file(bad), new MappingText("map.toml", toml, true));
      } catch (TableException e) {
        assertThat(e).as("seed 77, round %d", round).hasMessageContaining("hostile.csv");
      }
      try {
        MappingProposal.of(file(bad));
      } catch (TableException e) {
        assertThat(e).as("seed 77, round %d", round).hasMessageContaining("hostile.csv");
      }
    }
  }
}
