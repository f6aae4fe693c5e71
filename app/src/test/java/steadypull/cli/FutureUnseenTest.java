package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Advice may rest on nothing that had not happened yet. */
@Execution(ExecutionMode.CONCURRENT)
class FutureUnseenTest {
  private static final long SEED = 812;
  private static final int CUTS = 3;

  @TempDir private Path folder;

  @Test
  void cuttingATableLeavesAllAdviceAndForecastsBeforeTheCutUnchanged() throws Exception {
    Desk desk = new Desk(folder.resolve("library"));
    Path table = table(desk);
    List<String> rows = Files.readAllLines(table);
    List<String> whole = advised(desk, table);
    SplittableRandom random = new SplittableRandom(SEED);
    for (int each = 0; each < CUTS; each++) {
      // Forecasts begin after a minute, which is a third of the drive.
      int kept = random.nextInt(rows.size() / 2, rows.size() - 1);
      Path cut = Files.write(folder.resolve("cut.csv"), rows.subList(0, kept));
      List<String> early = advised(desk, cut);

      assertThat(early.size()).as("seed %d, %d rows kept", SEED, kept).isGreaterThan(1);
      assertThat(early.subList(0, early.size() - 1))
          .as("seed %d, %d rows kept", SEED, kept)
          .isEqualTo(whole.subList(0, early.size() - 1));
    }
  }

  private Path table(Desk desk) {
    String trip =
        desk.type(
                "record",
                "--quiet",
                "--port",
                "demo:long-hot-grade?speed=max&start=350",
                "--vehicle",
                "Wattle 2",
                "--for",
                "3m")
            .line();
    Path table = folder.resolve("whole.csv");
    assertThat(desk.type("export", trip, "--to", table.toString()).status()).isZero();
    return table;
  }

  private static List<String> advised(Desk desk, Path table) {
    Desk.Answer answer =
        desk.type("advise", table.toString(), "--vehicle", "Wattle 2", "--forecasts", "5");
    assertThat(answer.status()).as(answer.err()).isZero();
    return answer.lines();
  }
}
