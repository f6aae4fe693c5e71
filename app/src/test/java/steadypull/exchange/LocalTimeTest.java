package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Sample;

/**
 * Times as people's tables tell them. Clocks of the zone CET go forward on the last Sunday of March
 * at 01:00 UTC and back on the last of October (Directive 2000/84/EC, articles 2 and 3): in 2026 on
 * 29 March and 25 October.
 */
class LocalTimeTest {
  private static final ZoneId CET = ZoneId.of("CET");
  private static final String DATED =
      """
      [time]
      column = "Time"
      date_column = "Date"
      format = "d.M.uuuu H:mm:ss"
      [columns]
      "V" = "vehicle_speed[km/h]"
      """;
  private static final String OF_DAY =
      """
      [time]
      column = "Time"
      format = "H:mm:ss"
      date = 2026-10-25
      [columns]
      "V" = "vehicle_speed[km/h]"
      """;

  @TempDir private Path folder;
  private ForeignTables tables;

  @BeforeEach
  void inThisFolder() {
    tables = new ForeignTables(folder);
  }

  private ForeignTables.Read read(String text, String toml, Optional<ZoneId> said)
      throws Exception {
    Path file = tables.file(text);
    TableZone zone = new TableZone(said, ZoneId.of("Etc/GMT-5"));
    IncomingTable table = TripTable.open(file, new MappingText("map.toml", toml, true), zone);
    List<Sample> samples = new ArrayList<>();
    long end = table.read(samples::add, TransferWatch.NONE);
    return new ForeignTables.Read(table, samples, end);
  }

  @Test
  void dayAndTimeMayStandInTwoColumnsAndGoOverMidnight() throws Exception {
    ForeignTables.Read read =
        read("Date,V,Time\n14.7.2026,70,23:59:59\n15.7.2026,71,0:00:01\n", DATED, Optional.of(CET));

    assertThat(read.table().start().moment()).hasToString("2026-07-14T21:59:59Z");
    assertThat(read.micros()).containsExactly(0L, 2_000_000L);
    assertThat(read.values()).containsExactly(70.0, 71.0);
    assertThat(read.table().clockWords()).isEmpty();
  }

  @Test
  void aZoneThatNobodyToldIsNamed() throws Exception {
    ForeignTables.Read read = read("Date,Time,V\n14.7.2026,12:00:00,70\n", DATED, Optional.empty());

    assertThat(read.table().start().moment()).hasToString("2026-07-14T07:00:00Z");
    assertThat(read.table().clockWords())
        .singleElement()
        .asString()
        .contains("Etc/GMT-5", "--zone", "this machine");
  }

  @Test
  void whatIsSaidStandsBeforeWhatTheMappingSays() throws Exception {
    String mapped = DATED.replace("[columns]", "zone = \"+09:00\"\n[columns]");
    String table = "Date,Time,V\n14.7.2026,12:00:00,70\n";

    assertThat(read(table, mapped, Optional.empty()).table().start().moment())
        .hasToString("2026-07-14T03:00:00Z");
    assertThat(read(table, mapped, Optional.of(CET)).table().start().moment())
        .hasToString("2026-07-14T10:00:00Z");
  }

  @ParameterizedTest
  @ValueSource(strings = {DATED, OF_DAY})
  void anHourThatExistsTwiceIsItsFirstPassUntilTheClockGoesBack(String toml) throws Exception {
    ForeignTables.Read read =
        read(
            """
            Date,Time,V
            25.10.2026,1:59:59,70
            25.10.2026,2:00:00,71
            25.10.2026,2:59:59,72
            25.10.2026,2:00:00,73
            25.10.2026,2:59:59,74
            25.10.2026,3:00:00,75
            """,
            toml.equals(DATED) ? toml : toml + "\"Date\" = \"ignore\"\n",
            Optional.of(CET));

    assertThat(read.table().start().moment()).hasToString("2026-10-24T23:59:59Z");
    assertThat(read.micros())
        .containsExactly(
            0L, 1_000_000L, 3_600_000_000L, 3_601_000_000L, 7_200_000_000L, 7_201_000_000L);
    assertThat(read.table().clockWords())
        .singleElement()
        .asString()
        .contains("2026-10-25T02:00", "2026-10-25T03:00", "exist twice in CET", "--zone");
  }

  @Test
  void aRowThatComesMillisecondsEarlyIsNoSecondPass() throws Exception {
    String toml =
        DATED.replace("H:mm:ss", "H:mm:ss.SSS").replace("[columns]", "repeats = true\n[columns]");
    ForeignTables.Read read =
        read(
            "Date,Time,V\n25.10.2026,2:00:00.005,70\n25.10.2026,2:00:00.001,71\n",
            toml,
            Optional.of(CET));

    assertThat(read.micros()).containsExactly(0L, 1L);
  }

  @Test
  void aClockThatGoesBackWithoutASecondPassIsRefused() {
    assertThatThrownBy(
            () ->
                read(
                    "Date,Time,V\n25.10.2026,3:30:00,70\n25.10.2026,3:00:00,71\n",
                    DATED,
                    Optional.of(CET)))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("line 3");
  }

  @Test
  void anHourThatDoesNotExistIsRefusedWithTheWayOut() throws Exception {
    String table = "Date,Time,V\n29.3.2026,1:59:59,70\n29.3.2026,2:30:00,71\n";

    assertThatThrownBy(() -> read(table, DATED, Optional.of(CET)))
        .isInstanceOf(TableException.class)
        .hasMessageContainingAll("line 3", "exists in CET", "2026-03-29T02:30", "--zone");
    assertThat(read(table, DATED, Optional.of(ZoneId.of("+01:00"))).micros())
        .containsExactly(0L, 1_801_000_000L);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "11:59:59 PM|12:00:01 AM",
        "11:59:59 p.m.|12:00:01 a.m.",
        "11:59:59\u202FPM|12:00:01\u202Fam"
      })
  void hoursOfTwelveAreReadHoweverTheHalfIsWritten(String times) throws Exception {
    String toml =
        """
        [time]
        column = "T"
        format = "h:mm:ss a"
        zone = "Z"
        [columns]
        "V" = "vehicle_speed[km/h]"
        """;
    ForeignTables.Read read =
        read("T,V\n" + times.replace("|", ",70\n") + ",71\n", toml, Optional.empty());

    assertThat(read.micros()).containsExactly(0L, 2_000_000L);
    assertThat(read.table().start().moment()).hasToString("2026-07-14T23:59:59Z");
  }

  @Test
  void hoursOfTwelveWithoutTheirHalfAreAFaultOfTheMapping() {
    assertThatThrownBy(
            () -> read("Time,V\n1:00:00,70\n", OF_DAY.replace("H:", "h:"), Optional.empty()))
        .isInstanceOf(TableException.class)
        .hasMessageContainingAll("AM or PM", "h:mm:ss");
  }

  @Test
  void aDayThatIsToldTwiceIsAFaultOfTheMapping() {
    String toml = DATED.replace("[columns]", "date = 2026-07-14\n[columns]");
    assertThatThrownBy(() -> read("Date,Time,V\n", toml, Optional.empty()))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("either date or date_column");
  }
}
