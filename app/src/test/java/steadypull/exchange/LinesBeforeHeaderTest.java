package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Loggers say something of themselves before the table. */
class LinesBeforeHeaderTest {
  private static final String TABLE =
      """
      "A logger, of its own kind
      Vehicle: Coppice 3; Driver: nobody

      Time,Water [C],Speed [km/h]
      07:13:43,80,70
      07:13:44,81,71
      07:13:45,82,72
      """;
  private static final String MAP =
      """
      [time]
      column = "Time"
      format = "H:mm:ss"
      [columns]
      "Water [C]" = "engine_coolant_temp[degC]"
      "Speed [km/h]" = "vehicle_speed[km/h]"
      """;

  @TempDir private Path folder;
  private ForeignTables tables;

  @BeforeEach
  void inThisFolder() {
    tables = new ForeignTables(folder);
  }

  @Test
  void theyArePassedOver() throws Exception {
    ForeignTables.Read read = tables.read(TABLE, MAP);

    assertThat(read.values()).containsExactly(80.0, 70.0, 81.0, 71.0, 82.0, 72.0);
    assertThat(read.table().headerLine()).isEqualTo("Time,Water [C],Speed [km/h]");
  }

  @Test
  void faultsAreStillToldByTheLinesOfTheFile() {
    assertThatThrownBy(() -> tables.read(TABLE.replace("81,71", "81,fast"), MAP))
        .isInstanceOf(TableException.class)
        .hasMessageContainingAll("line 6", "column 3", "\"fast\"");
    assertThatThrownBy(() -> tables.read(TABLE.replace("81,71", "81,\"7\"1"), MAP))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("line 6, column 3");
  }

  @Test
  void theyMayBeMoreOrFewerInTheNextTable() throws Exception {
    assertThat(tables.read("Another\n" + TABLE, MAP).values()).hasSize(6);
    assertThat(tables.read(TABLE.substring(TABLE.indexOf("Time,")), MAP).values()).hasSize(6);
  }

  @Test
  void aLineThatOnlyNamesTheTimeIsNotTheHeader() throws Exception {
    assertThat(tables.read("Time,2026\n" + TABLE, MAP).values()).hasSize(6);
  }

  @Test
  void theProposalTellsWhichLineItTookAndIsTakenAsItIs() throws Exception {
    String proposal = MappingProposal.of(tables.file(TABLE));

    assertThat(proposal).contains("line 4 is taken for the header", "column = \"Time\"");
    assertThat(tables.read(TABLE, proposal).values()).hasSize(6);
  }
}
