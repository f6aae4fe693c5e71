package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A table of 1 GB goes into the library and out again in a program that may use 64 MB of heap: the
 * same octets come out, and what is left on the heap after each collection does not grow on the
 * way. Prints figures.
 */
@Tag("soak")
class LongTableSoakTest {
  private static final long BYTES = 1_000_000_000;
  private static final int COLUMNS = 12;
  private static final int HEAP_MEGABYTES = 64;

  /** What a collection leaves varies with what it happened to catch on its way. Estimated. */
  private static final int SLACK_MEGABYTES = 8;

  private static final Pattern AFTER_COLLECTION = Pattern.compile("\\d+M->(\\d+)M\\(\\d+M\\)");

  @TempDir private Path folder;

  @Test
  void aGigabyteGoesInAndOutWithoutGrowingInMemory() throws Exception {
    Path library = folder.resolve("library");
    Path table = folder.resolve("long.csv");
    long samples = write(table);

    String id = run("import", library, "import", table.toString()).getFirst();
    Path back = folder.resolve("back.csv");
    run("export", library, "export", id, "--to", back.toString());

    assertThat(Files.mismatch(table, back)).isEqualTo(-1);
    assertThat(new Desk(library).type("trips", "--json").out())
        .contains("\"samples\":" + samples + ",");
  }

  private List<String> run(String name, Path library, String... arguments) throws Exception {
    Path log = folder.resolve(name + ".log");
    long began = System.nanoTime();
    try (ChildProgram program =
        ChildProgram.start(
            List.of(
                "-XX:TieredStopAtLevel=4", // as people run it; short-lived children compile less
                "-Xmx" + HEAP_MEGABYTES + "m",
                "-XX:+UseSerialGC",
                "-Xlog:gc:file=" + log),
            library,
            arguments)) {
      List<String> printed = program.outputToTheEnd();
      assertThat(program.status()).isZero();
      report(name, (System.nanoTime() - began) / 1e9, Files.readString(log));
      return printed;
    }
  }

  private static void report(String name, double seconds, String log) {
    List<Integer> left =
        AFTER_COLLECTION
            .matcher(log)
            .results()
            .map((MatchResult each) -> Integer.valueOf(each.group(1)))
            .toList();
    int half = left.size() / 2;
    int first = left.subList(0, half).stream().mapToInt(Integer::intValue).max().orElseThrow();
    int second =
        left.subList(half, left.size()).stream().mapToInt(Integer::intValue).max().orElseThrow();
    System.out.printf(
        Locale.ROOT,
        "%s of 1 GB: %.0f s, heap after collections at most %d MB in the first half, %d MB in the"
            + " second (%d collections)%n",
        name,
        seconds,
        first,
        second,
        left.size());
    assertThat(second).isLessThanOrEqualTo(first + SLACK_MEGABYTES);
  }

  /** Writes a drive of random walks as an export writes it; returns how many samples it has. */
  private static long write(Path table) throws IOException {
    SplittableRandom random = new SplittableRandom(1);
    long samples = 0;
    long bytes = 0;
    int[] tenths = new int[COLUMNS];
    try (BufferedWriter out = Files.newBufferedWriter(table)) {
      StringBuilder line = new StringBuilder("time[s]");
      for (int column = 0; column < COLUMNS; column++) {
        line.append(",own_%d[1]".formatted(column));
      }
      for (long row = 0; bytes < BYTES; row++) {
        out.append(line.append("\r\n"));
        bytes += line.length();
        line.setLength(0);
        append(line, row * 2);
        for (int column = 0; column < COLUMNS; column++) {
          tenths[column] += random.nextInt(-3, 4);
          append(line.append(','), tenths[column]);
          samples++;
        }
      }
      out.append(line.append("\r\n"));
    }
    return samples;
  }

  /** With no more digits than needed. */
  private static void append(StringBuilder line, long tenths) {
    line.append(tenths < 0 ? "-" : "").append(Math.abs(tenths) / 10);
    if (tenths % 10 != 0) {
      line.append('.').append(Math.abs(tenths) % 10);
    }
  }
}
