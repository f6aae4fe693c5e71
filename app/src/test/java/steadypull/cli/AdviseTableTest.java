package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables are judged by the reading that imports them. */
class AdviseTableTest {
  private static final String MAP =
      """
      [time]
      column = "T"
      format = "seconds"
      [columns]
      "Water" = "engine_coolant_temp[degC]"
      """;

  @TempDir private Path folder;
  private Desk desk;
  private Path own;
  private Path foreign;
  private Path map;

  /** Coolant that boils over, in our own form and in another. */
  @BeforeEach
  void twoTables() throws Exception {
    desk = new Desk(folder.resolve("library"));
    StringBuilder rows = new StringBuilder();
    for (int second = 0; second < 120; second++) {
      rows.append(second + "," + (90 + second * 0.25) + "\n");
    }
    own =
        Files.writeString(folder.resolve("own.csv"), "time[s],engine_coolant_temp[degC]\n" + rows);
    foreign = Files.writeString(folder.resolve("foreign.csv"), "T,Water\n" + rows);
    map = Files.writeString(folder.resolve("map.toml"), MAP);
  }

  @Test
  void aForeignTableIsJudgedAsOurOwn() {
    Desk.Answer expected = desk.type("advise", own.toString());
    Desk.Answer answer = desk.type("advise", foreign.toString(), "--map", map.toString());

    assertThat(expected.out()).contains("\"event\":\"raised\"", "\"event\":\"end\"");
    assertThat(answer.out()).isEqualTo(expected.out());
  }

  @Test
  void aMappingThatTheLibraryKeepsIsTakenAndTold() {
    desk.type("import", foreign.toString(), "--map", map.toString());
    Desk.Answer answer = desk.type("advise", foreign.toString());

    assertThat(answer.out()).isEqualTo(desk.type("advise", own.toString()).out());
    assertThat(answer.err()).contains("foreign.csv: Read by the mapping that was kept");
  }

  @Test
  void aTableThatIsFaultyAtItsEndIsRefusedBeforeTheFirstWord() throws Exception {
    Files.writeString(own, Files.readString(own) + "120,hot\n");
    Desk.Answer answer = desk.type("advise", own.toString());

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("line 122", "\"hot\"");
  }

  @Test
  void aMappingForATripIsWrongUsage() {
    Desk.Answer answer = desk.type("advise", "20260101", "--map", map.toString());

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("expected a table behind --map and --zone");
  }
}
