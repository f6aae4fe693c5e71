package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** What a mapping says of a table, and what is said of a faulty mapping. */
class TableMappingTest {
  private static final String SPEED_ONLY =
      "[time]\ncolumn = \"T\"\nformat = \"seconds\"\n[columns]\n\"V\" = \"vehicle_speed[km/h]\"\n";

  @TempDir private Path folder;
  private ForeignTables tables;

  @BeforeEach
  void inThisFolder() {
    tables = new ForeignTables(folder);
  }

  /** The mapping of the contract, word by word. */
  @Test
  void theMappingOfTheContractIsTaken() throws Exception {
    ForeignTables.Read read =
        tables.read(
            "Time,Coolant [C]\n07:13:43.098,16\n07:13:43.188,17\n",
            """
            [time]
            column = "Time"
            format = "HH:mm:ss.SSS"
            [columns]
            "Coolant [C]" = "engine_coolant_temp[degC]"
            """);

    assertThat(read.samples())
        .containsExactly(
            new Sample(Channels.ENGINE_COOLANT_TEMP, 0, 16),
            new Sample(Channels.ENGINE_COOLANT_TEMP, 90_000, 17));
    assertThat(read.endMicros()).isEqualTo(90_000);
  }

  /** What the README shows may be copied. */
  @Test
  void theMappingOfTheReadmeIsTaken() throws Exception {
    String toml =
        Files.readAllLines(Path.of("..", "README.md")).stream()
            .dropWhile(line -> !line.startsWith("    separator = "))
            .takeWhile(line -> line.isEmpty() || line.startsWith("    "))
            .collect(Collectors.joining("\n"));

    ForeignTables.Read read =
        tables.read("Time;Coolant [F];RPM;Note\n23:59:59,500;203;1850;hot\n00:00:00,500;;\n", toml);

    assertThat(read.values()).containsExactly(95.0, 1850.0);
    assertThat(read.table().start().moment()).hasToString("2026-07-15T21:59:59.500Z");
  }

  @Test
  void cellsThatAreSaidToMeanNothingHoldNoSample() throws Exception {
    String table = "T,V\n0,N/A\n1,7\n2, - \n3,-9999\n4,\n";

    assertThat(tables.read(table, "missing = [\"N/A\", \"-\", \"-9999\"]\n" + SPEED_ONLY).values())
        .containsExactly(7.0);
    assertThatThrownBy(() -> tables.read(table, "missing = [\"n/a\"]\n" + SPEED_ONLY))
        .hasMessageContaining("line 2, column 2 (V): expected a number");
    for (String wrong : new String[] {"\"-\"", "[1]", "true"}) {
      assertThatThrownBy(() -> tables.read(table, "missing = " + wrong + "\n" + SPEED_ONLY))
          .hasMessageContaining("map.toml, line 1, column 1: expected texts in square brackets");
    }
  }

  @Test
  void aTableOfWhichNothingIsTakenIsRefused() {
    String ignoring = SPEED_ONLY.replace("vehicle_speed[km/h]", "ignore");

    assertThatThrownBy(() -> tables.read("T,V\n0,\n1,-\n", "missing = [\"-\"]\n" + SPEED_ONLY))
        .hasMessageContaining("expected at least one value, found empty cells only")
        .hasMessageContaining("Nothing was taken.");
    assertThatThrownBy(() -> tables.read("T,V\n0,1\n", ignoring))
        .hasMessageContaining("found no column but the time that is taken")
        .hasMessageContaining("which columns the mapping ignores");
  }

  @ParameterizedTest
  @ValueSource(strings = {"held = true\n%s", "%sheld = true\n"})
  void valuesAreHeldWhereverThatIsSaid(String where) throws Exception {
    String table = "T,V\n" + "%d,7\n".repeat(4).formatted(1, 2, 3, 4);

    assertThat(tables.read(table, SPEED_ONLY).samples()).hasSize(4);
    assertThat(tables.read(table, where.formatted(SPEED_ONLY)).samples()).hasSize(1);
  }

  @Test
  void unitsAreConvertedAndColumnsPassedOver() throws Exception {
    ForeignTables.Read read =
        tables.read(
            "n;T;V;own[1];\n1;0;50;7;\n2;0,5;60;8;\n",
            """
            separator = ";"
            decimal = ","
            [time]
            column = "T"
            format = "seconds"
            [columns]
            n = "ignore"
            "" = "ignore"
            V = "vehicle_speed[mph]"
            """);

    assertThat(read.samples())
        .containsExactly(
            new Sample(Channels.VEHICLE_SPEED, 0, 50 * 1.609344),
            new Sample(new Channel("own", "1"), 0, 7),
            new Sample(Channels.VEHICLE_SPEED, 500_000, 60 * 1.609344),
            new Sample(new Channel("own", "1"), 500_000, 8));
    assertThat(read.table().conversions()).containsExactly("V to km/h");
  }

  // Moments: RFC 3339, section 5.8, has such examples; 1784137512 s after 1970 is
  // 2026-07-15T17:45:12Z (GNU date 9.1).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "seconds|0.25|0.5|250000|500000|",
        "milliseconds|250|500.5|250000|500500|",
        "ms|250|500.0004|250000|500000|",
        "epoch-seconds|1784137512.5|1784137513|0|500000|2026-07-15T17:45:12.500Z",
        "epoch|1784137512|1784137513|0|1000000|2026-07-15T17:45:12Z",
        "epoch-milliseconds|1784137512000|1784137512090|0|90000|2026-07-15T17:45:12Z",
        "iso-8601|2026-07-15T17:45:12.25Z|2026-07-15T19:45:12.5+02:00|0|250000|2026-07-15T17:45:12.250Z",
        "ISO 8601|2026-07-15 17:45|2026-07-15 17:45:01,5|0|1500000|2026-07-15T17:45:00Z",
        "rfc3339|2026-07-15t17:45:12z|2026-07-15T17:45:13Z|0|1000000|2026-07-15T17:45:12Z",
        "d.M.uuuu H:mm:ss|15.7.2026 9:45:12|15.07.2026 09:45:13|0|1000000|2026-07-15T09:45:12Z",
        "M/d/yyyy h:mm:ss a|7/15/2026 5:45:12 pm|7/15/2026 5:45:13"
            + " PM|0|1000000|2026-07-15T17:45:12Z",
      })
  void everyFormOfTimeIsRead(
      String format, String one, String other, long first, long second, String start)
      throws Exception {
    ForeignTables.Read read =
        tables.read(
            "T;V\n%s;1\n%s;2\n".formatted(one, other),
            "separator = \"semicolon\"\n" + SPEED_ONLY.replace("seconds", format));

    assertThat(read.micros()).containsExactly(first, second);
    TableStart known = read.table().start();
    if (start == null) {
      assertThat(known).isEqualTo(new TableStart.TimeOfFile(ForeignTables.FILE_TIME));
    } else {
      assertThat(known).isInstanceOf(TableStart.Told.class);
      assertThat(known.moment()).hasToString(start);
    }
  }

  @Test
  void aTimeOfDayGoesOnOverMidnight() throws Exception {
    ForeignTables.Read read =
        tables.read(
            "T,V\n23:59:59.5,1\n00:00:00.5,2\n23:00:00,3\n01:00:00,4\n",
            SPEED_ONLY.replace(
                "\"seconds\"", "\"HH:mm:ss[.S]\"\ndate = 2026-03-01\nzone = \"+02:00\""));

    assertThat(read.micros()).containsExactly(0L, 1_000_000L, 82_800_500_000L, 90_000_500_000L);
    assertThat(read.table().start().moment()).hasToString("2026-03-01T21:59:59.500Z");
    assertThat(read.table().start().offset()).contains(ZoneOffset.ofHours(2));
  }

  /** Two loggers of one clock: the file was written at ten, so half past ten was yesterday. */
  @ParameterizedTest
  @CsvSource({"09:30:00, 2026-07-15T09:30:00Z", "10:30:00, 2026-07-14T10:30:00Z"})
  void withoutADateTheFileTellsTheDay(String time, String start) throws Exception {
    ForeignTables.Read read =
        tables.read("T,V\n" + time + ",1\n", SPEED_ONLY.replace("seconds", "HH:mm:ss"));

    assertThat(read.table().start()).isInstanceOf(TableStart.DayOfFile.class);
    assertThat(read.table().start().moment()).hasToString(start);
  }

  @Test
  void aMappingThatWasKeptTellsNothingOfTheDay() throws Exception {
    String toml = SPEED_ONLY.replace("\"seconds\"", "\"HH:mm:ss\"\ndate = 2020-01-01");
    ForeignTables.Read read =
        ForeignTables.read(tables.file("T,V\n09:30:00,1\n"), new MappingText("kept", toml, false));

    assertThat(read.table().start().moment()).hasToString("2026-07-15T09:30:00Z");
  }

  @Test
  void aCounterMayBeginAnywhere() throws Exception {
    ForeignTables.Read read =
        tables.read(
            "T,V\n5000.5,1\n5001,2\n",
            SPEED_ONLY.replace("\"seconds\"", "\"seconds\"\nfirst_row_is_zero = true"));

    assertThat(read.micros()).containsExactly(0L, 500_000L);
  }

  @Test
  void rowsMayShareATimeIfTheMappingSaysSo() throws Exception {
    String table = "T,V\n1,1\n1,2\n1,3\n2,4\n";

    assertThat(
            tables
                .read(table, SPEED_ONLY.replace("\"seconds\"", "\"seconds\"\nrepeats = true"))
                .micros())
        .containsExactly(1_000_000L, 1_000_001L, 1_000_002L, 2_000_000L);
    assertThatThrownBy(() -> tables.read(table, SPEED_ONLY))
        .hasMessageContaining("line 3, column 1 (T): expected a time after the row before, 1 s")
        .hasMessageContaining("repeats = true");
  }

  @Test
  void rowsMayEndEarlyIfTheMappingSaysSo() throws Exception {
    assertThat(tables.read("T,V\n1,1\n2\n", "ragged = true\n" + SPEED_ONLY).values())
        .containsExactly(1.0);
    assertThatThrownBy(() -> tables.read("T,V\n1,1\n2\n", SPEED_ONLY))
        .hasMessageContaining("line 3: expected 2 fields")
        .hasMessageContaining("ragged = true");
  }

  @ParameterizedTest
  @CsvSource({
    "utf-8, UTF-8",
    "windows-1252, windows-1252",
    "iso-8859-1, ISO-8859-1",
    "utf-16, UTF-16"
  })
  void headersAreReadInTheEncodingThatIsSaid(String word, String charset) throws Exception {
    String toml = "encoding = \"%s\"\n".formatted(word) + SPEED_ONLY.replace("\"V\"", "\"Öl °\"");
    Path file = tables.file("T,Öl °\n1,5\n", Charset.forName(charset));

    assertThat(ForeignTables.read(file, new MappingText("m", toml, true)).values())
        .containsExactly(5.0);
  }

  @Test
  void aHeaderThatWasEncodedTwiceIsRepaired() throws Exception {
    String twice =
        new String("Öl °".getBytes(StandardCharsets.UTF_8), Charset.forName("windows-1252"));
    String toml = "encoding = \"utf-8-twice\"\n" + SPEED_ONLY.replace("\"V\"", "\"Öl °\"");

    assertThat(twice).isEqualTo("Ã–l Â°");
    assertThat(tables.read("T," + twice + "\n1,5\n", toml).values()).containsExactly(5.0);
    assertThatThrownBy(
            () -> tables.read("T," + twice + "\n1,5\n", toml.replace("utf-8-twice", "utf-8")))
        .hasMessageContaining("expected the header \"Öl °\" that the mapping names");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "seperator = \";\"|map.toml, line 1, column 1: expected one of separator|Did you mean"
            + " separator?",
        "separator = \"::\"|line 1, column 1: expected one character|\"::\"",
        "decimal = \"'\"|expected \".\" or \",\"|\"'\"",
        "encoding = \"utf-9\"|expected one of utf-8, utf-8-twice|Did you mean utf-8",
        "held = 1|expected true or false|1",
        "round = 0|expected whole rows from 1 to|map.toml, line 1",
        "[time]|\\n  map.toml|expected column = \"...\", found none",
        "[tume]|expected a table [time]|unknown key \"tume\"",
        "x = |expected TOML, found a fault: Unexpected|line 1",
        "x = \"\\]\"|expected TOML, found a fault: Invalid escape|map.toml, line 1, column 6",
      })
  void aFaultyMappingIsRefusedAtItsPlace(String line, String words, String moreWords) {
    String toml = line + "\n" + (line.startsWith("[") ? "[columns]\nV = \"ignore\"\n" : SPEED_ONLY);

    assertThatThrownBy(() -> tables.read("T,V\n1,5\n", toml))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("Could not use the mapping map.toml")
        .hasMessageContaining(words.replace("\\n", "\n"))
        .hasMessageContaining(moreWords)
        .hasMessageContaining("Nothing was taken");
  }

  @Test
  void everyFaultOfAMappingIsToldAtOnce() {
    String toml =
        """
        [time]
        column = "T"
        format = "furlongs"
        date = "today"
        zone = "Nowhere/Land"
        [columns]
        "V" = "speed of it"
        "W" = "engine_coolant_temp[kPa]"
        "X" = { chanel = "gear[1]" }
        "Y" = 5
        """;

    assertThatThrownBy(() -> tables.read("T,V\n1,5\n", toml))
        .hasMessageContaining("line 3, column 1: expected seconds, milliseconds")
        .hasMessageContaining("line 4, column 1: expected a day without quotes")
        .hasMessageContaining("line 5, column 1: expected an offset")
        .hasMessageContaining("line 7, column 1: expected id[unit] or ignore")
        .hasMessageContaining("line 8, column 1: expected one of the units degC")
        .hasMessageContaining("the unknown key \"chanel\". Did you mean channel?")
        .hasMessageContaining("line 10, column 1: expected \"id[unit]\" or \"ignore\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "T,V,Oil\\n"
            + "1,5,6\\n"
            + "|line 1, column 3: expected a header that the mapping names, found \"Oil\"",
        "T,Speed\\n1,5\\n|line 1: expected the header \"V\" that the mapping names",
        "T,V,V\\n1,5,6\\n|line 1, column 3 (V): expected each channel once",
        "T,V,vehicle_speed[km/h]\\n"
            + "1,5,6\\n"
            + "|column 3 (vehicle_speed[km/h]): expected each channel once",
        "T;V\\n1;5\\n|Fields are parted by \",\"",
        "T,V\\n1,x\\n|line 2, column 2 (V): expected a number such as 96.5, found \"x\"",
        "T,V\\nnoon,5\\n|line 2, column 1 (T): expected a number",
        "T,V\\n-1,5\\n|line 2, column 1 (T): expected seconds since the start",
        "T,V\\n1e9,5\\n|at most a year",
      })
  void aTableThatDoesNotFitItsMappingIsRefusedAtItsPlace(String table, String words) {
    assertThatThrownBy(() -> tables.read(table.replace("\\n", "\n"), SPEED_ONLY))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("foreign.csv")
        .hasMessageContaining(words)
        .hasMessageContaining("Nothing was taken");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "HH:mm:ss|25:00:00|expected a time of the form HH:mm:ss, found \"25:00:00\"",
        "iso-8601|2026-02-30T00:00:00Z|expected a time of the form iso-8601",
        "epoch-seconds|1784137512000|expected a time before the year 2900",
        "epoch-milliseconds|-5|expected a time of 0 or more",
      })
  void aTimeThatIsNoneIsRefused(String format, String time, String words) {
    assertThatThrownBy(
            () -> tables.read("T,V\n" + time + ",5\n", SPEED_ONLY.replace("seconds", format)))
        .hasMessageContaining("line 2, column 1 (T): " + words);
  }

  @Test
  void aClockThatGoesBackIsRefused() {
    assertThatThrownBy(
            () ->
                tables.read(
                    "T,V\n10:00:00,5\n09:59:59,6\n", SPEED_ONLY.replace("seconds", "HH:mm:ss")))
        .hasMessageContaining("line 3, column 1 (T): expected a time after the row before, 10:00")
        .hasMessageContaining("Only midnight may turn a clock back.");
  }

  @Test
  void aPointIsRefusedWhereACommaPartsTheFraction() {
    assertThatThrownBy(
            () ->
                tables.read("T;V\n1;1.234\n", "separator = \";\"\ndecimal = \",\"\n" + SPEED_ONLY))
        .hasMessageContaining("expected a number such as 96,5, found \"1.234\"")
        .hasMessageContaining("a comma parts the fraction");
  }
}
