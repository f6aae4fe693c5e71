package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Tables stream: what is in memory does not grow with the table. Counted, not timed: how far the
 * file is read when a sample comes out, and how many samples went in when a row comes out.
 */
class TableStreamTest {
  private static final int ROWS = 300_000;

  @TempDir private Path folder;

  private Path table() throws IOException {
    Path file = folder.resolve("long.csv");
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("time[s],gear[1]\n");
      for (int row = 0; row < ROWS; row++) {
        out.write("%07d,%d\n".formatted(row, row % 6));
      }
    }
    return file;
  }

  @Test
  void samplesComeOutWhileTheFileIsReadABufferAhead() throws Exception {
    IncomingTable table = TripTable.open(table());
    List<Long> bytesRead = new ArrayList<>();
    long[] count = new long[1];

    table.read(
        sample -> count[0]++,
        done -> {
          bytesRead.add(done - count[0] * 10);
          return true;
        });

    assertThat(count[0]).isEqualTo(ROWS);
    assertThat(bytesRead).hasSizeGreaterThan(100).allMatch(ahead -> ahead < 200_000);
  }

  @Test
  void rowsAreWrittenWhileSamplesComeIn() throws Exception {
    long[] poured = new long[1];
    long[] mostAhead = new long[1];
    long[] lines = new long[1];
    Writer out =
        new Writer() {
          @Override
          public void write(char[] text, int offset, int length) {
            for (int each = offset; each < offset + length; each++) {
              lines[0] += text[each] == '\n' ? 1 : 0;
            }
            mostAhead[0] = Math.max(mostAhead[0], poured[0] - lines[0]);
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };

    TableWriter.write(
        out,
        List.of(Channels.GEAR),
        taker -> {
          for (int each = 0; each < ROWS; each++) {
            poured[0]++;
            taker.accept(new Sample(Channels.GEAR, each * 100L, each % 6));
          }
        },
        ExportChoice.ALL,
        TransferWatch.NONE,
        TableFile.LOOK_AHEAD);

    assertThat(lines[0]).isEqualTo(ROWS + 1);
    assertThat(mostAhead[0]).isLessThan(TableFile.LOOK_AHEAD + 20_000);
  }

  @Test
  void readingEndsWhereTheWatchEndsIt() throws Exception {
    IncomingTable table = TripTable.open(table());
    long[] count = new long[1];

    assertThatThrownBy(() -> table.read(sample -> count[0]++, done -> done < 1_000_000))
        .isInstanceOf(TableException.class)
        .hasMessageMatching(
            "Stopped reading .*long.csv at line \\d+, as asked. Nothing was taken.");
    assertThat(count[0]).isBetween(1L, ROWS - 1L);
  }

  @Test
  void writingEndsWhereTheWatchEndsItAndLeavesTheOldFile() throws Exception {
    Path file = Files.writeString(folder.resolve("old.csv"), "old");

    assertThatThrownBy(
            () ->
                TripTable.<RuntimeException>write(
                    file,
                    List.of(Channels.GEAR),
                    taker -> {
                      for (int each = 0; each < ROWS; each++) {
                        taker.accept(new Sample(Channels.GEAR, each, 1));
                      }
                    },
                    ExportChoice.ALL,
                    done -> done < 100_000))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("Stopped writing")
        .hasMessageContaining("It is as it was before.");
    assertThat(file).hasContent("old");
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }
}
