package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

class TripTableRefusalTest {
  @TempDir Path folder;

  @Test
  void foreignUnitsBecomeOurs() throws Exception {
    ImportedTable table =
        read(
            "time[s],engine_coolant_temp[degF],vehicle_speed[mph],manifold_pressure[psi],"
                + "altitude[ft],engine_speed[rpm],own_pressure[psi]\n0,212,50,20,1000,1850,20\n");

    assertThat(table.samples())
        .extracting(Sample::channel)
        .containsExactly(
            Channels.ENGINE_COOLANT_TEMP,
            Channels.VEHICLE_SPEED,
            Channels.MANIFOLD_PRESSURE,
            Channels.ALTITUDE,
            Channels.ENGINE_SPEED,
            new Channel("own_pressure", "psi"));
    assertThat(table.samples())
        .extracting(sample -> Math.round(sample.value() * 1e4) / 1e4)
        .containsExactly(100.0, 80.4672, 137.8951, 304.8, 1850.0, 20.0);
    assertThat(table.conversions())
        .containsExactly(
            "engine_coolant_temp[degF] to degC",
            "vehicle_speed[mph] to km/h",
            "manifold_pressure[psi] to kPa",
            "altitude[ft] to m");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "time[s],gear[1]\\n"
            + "0,3\\n"
            + "1,x|line 3, column 2 (gear[1]): expected a number such as 96.5, found \"x\"",
        "time[s],gear[1]\\n0,NaN|line 2, column 2 (gear[1]): expected a number",
        "time[s],gear[1]\\n0,Infinity|expected a number",
        "time[s],gear[1]\\n0,0x1p3|expected a number",
        "time[s],gear[1]\\n0,3d|expected a number",
        "time[s],gear[1]\\n0,1e999|expected a number up to 1.7e308, found \"1e999\"",
        "time[s],gear[1]\\n0,\"1,5\"|Write a decimal point, not a comma.",
        "time[s],gear[1]\\n0,=1+1|found \"=1+1\"",
        "time[s],gear[1]\\n"
            + "0,3\\n"
            + "0,4|line 3, column 1 (time[s]): expected a time after the row before, 0 s, found"
            + " \"0\"",
        "time[s],gear[1]\\n5,3\\n4.9,4|expected a time after the row before, 5 s, found \"4.9\"",
        "time[s],gear[1]\\n"
            + "0.0000001,3\\n"
            + "0.0000002,4|\"0.0000002\". Times are kept to one microsecond, no finer. Nothing",
        "time[s],gear[1]\\n-1,3|seconds since the start of the trip, 0 or more, found \"-1\"",
        "time[s],gear[1]\\n1784137512,3|A time of the clock must be turned into seconds",
        "time[s],gear[1]\\n,3|line 2, column 1 (time[s]): expected a number",
        "time[s],gear[1]\\n0|line 2: expected 2 fields as in the header, found 1 fields",
        "time[s],gear[1]\\n0,3,|line 2: expected 2 fields as in the header, found 3 fields",
        "time[s],Coolant Temp\\n"
            + "0,3|line 1, column 2: expected a header of the form id[unit], found \"Coolant"
            + " Temp\". Did you mean engine_coolant_temp[degC], charge_coolant_temp[degC]",
        "time[s],gear[1],gear[1]\\n"
            + "0,3,3|line 1, column 3: expected each channel once, found \"gear[1]\", which column"
            + " 2 has",
        "time[s],vehicle_speed[km/h],vehicle_speed[mph]\\n"
            + "0,3,3|line 1, column 3: expected each channel once",
        "time[s],engine_coolant_temp[kPa]\\n"
            + "0,3|line 1, column 2: expected one of the units degC, °C",
        "time[s],manifold_pressure[psig]\\n0,3|expected one of the units kPa",
        "gear[1],time[s]\\n0,3|line 1, column 1: expected the header time[s], found \"gear[1]\"",
        "time[s];gear[1]\\n0;3|Fields are separated by commas.",
        "time[s],gear[1]|line 1: expected at least one row, found the header only",
        "``|line 1: expected a header line time[s],..., found an empty file",
        "time[s],gear[1]\\n0,\\n1, |trip.csv: expected at least one value, found empty cells only",
        "time[s]\\n0\\n1|expected at least one value, found no column but the time",
        "time[s],gear[1]\\n"
            + "0,\"3\"x|line 2, column 2: expected a separator or a line end after the quote",
      })
  void everyFaultIsRefusedAtItsPlace(String table, String said) {
    assertThatThrownBy(() -> read(table.replace("\\n", "\n")))
        .isInstanceOf(TableException.class)
        .hasMessageContaining(folder.resolve("trip.csv").toString())
        .hasMessageContaining(said)
        .hasMessageContaining("Nothing was taken");
  }

  @Test
  void lineNumbersCountLinesOfTheFileNotRecords() {
    assertThatThrownBy(() -> read("time[s],\"own[1]\"\r\n\r\n0,3\r\n\r\n1,x\r\n"))
        .hasMessageContaining("line 5, column 2");
  }

  @Test
  void bytesThatAreNotUtf8AreRefusedAtTheirPlace() {
    byte[] inACell = "time[s],gear[1]\n0,3\n1,?\n".getBytes(StandardCharsets.UTF_8);
    inACell[inACell.length - 2] = (byte) 0xE9;
    byte[] inAHeader = "time[s],own[?C]\n0,3\n".getBytes(StandardCharsets.UTF_8);
    inAHeader[12] = (byte) 0xB0;

    assertThatThrownBy(() -> read(inACell))
        .hasMessageContaining("line 3, column 2 (gear[1])")
        .hasMessageContaining("found bytes that are not UTF-8");
    assertThatThrownBy(() -> read(inAHeader))
        .hasMessageContaining("line 1, column 2")
        .hasMessageContaining("found bytes that are not UTF-8");
    assertThatThrownBy(() -> read("time[s],gear[1]\n0,3".getBytes(StandardCharsets.UTF_16)))
        .hasMessageContaining("line 1: expected UTF-8, found UTF-16");
  }

  @Test
  void nulCharactersAreRefusedAndShown() {
    assertThatThrownBy(() -> read("time[s],gear[1]\n0,\0\n"))
        .hasMessageContaining("line 2, column 2 (gear[1])")
        .hasMessageContaining("a NUL character in \"\\u0000\"");
  }

  @Test
  void hugeFieldsAreRefusedWithTheirLine() {
    String huge = "9".repeat(200_000);

    assertThatThrownBy(() -> read("time[s],gear[1]\n0,3\n1," + huge + "\n"))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("line 3, column 2: expected a field of at most 16384 characters");
    assertThatThrownBy(
            () -> read("time[s],gear[1]\n0,3\n1,\"never closed\n" + "2,3\n".repeat(9_000)))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("line 3, column 2: expected a field of at most")
        .hasMessageContaining("Look for a missing quote: one opens in line 3.")
        .satisfies(e -> assertThat(e.toString()).hasSizeLessThan(500));
    assertThatThrownBy(() -> read("time[s],gear[1]\n0," + huge.substring(0, 1_000) + "\n"))
        .hasMessageContaining("line 2, column 2 (gear[1])");
  }

  @Test
  void refusalsHaveNoDoubledStopAndNoBlankBeforeALine() {
    for (String table :
        new String[] {"Time,Speed,Boost\n0,1,2\n", "time[s],gear[1]\n0,\"3\"x\n", "a;b\n1;2\n"}) {
      assertThatThrownBy(() -> read(table))
          .satisfies(e -> assertThat(e.getMessage()).doesNotContain(".. ", "\n Nothing", "  N"));
    }
  }

  @Test
  void aVastExponentCostsNothing() throws Exception {
    assertThat(read("time[s],gear[1]\n1e-9999,3\n").endMicros()).isZero();
    assertThatThrownBy(() -> read("time[s],gear[1]\n1e99999999,3\n"))
        .isInstanceOf(TableException.class);
  }

  // A table is either taken or refused with a message; nothing else ever comes out.
  @Test
  void noDamageToATableEscapesAsAnotherError() throws Exception {
    byte[] good =
        "\uFEFFtime[s],engine_coolant_temp[degF],own[\"x\"]\r\n0,212,\r\n1.5,\"200\",-3e2\r\n"
            .getBytes(StandardCharsets.UTF_8);
    SplittableRandom random = new SplittableRandom(99);
    for (int round = 0; round < 500; round++) {
      byte[] bad = good.clone();
      for (int changes = random.nextInt(1, 4); changes > 0; changes--) {
        bad[random.nextInt(bad.length)] = (byte) random.nextInt(256);
      }
      try {
        assertThat(read(bad).samples()).allMatch(sample -> Double.isFinite(sample.value()));
      } catch (TableException e) {
        assertThat(e).as("seed 99, round %d", round).hasMessageContaining("trip.csv");
      }
    }
  }

  @Test
  void otherKindsOfFilesAreNamed() {
    assertThatThrownBy(() -> ImportedTable.read(folder.resolve("a.trip")))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("a.trip: expected a file with a trip table, found a trip file");
    assertThatThrownBy(() -> ImportedTable.read(folder.resolve("b.GPX")))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("b.GPX: expected a file with a trip table, found a route or track");
    assertThatThrownBy(() -> ImportedTable.read(folder.resolve("none.csv")))
        .hasMessageContaining("found no file of that name");
    assertThatThrownBy(() -> ImportedTable.read(folder)).hasMessageContaining("found a folder");
  }

  private ImportedTable read(String text) throws Exception {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  private ImportedTable read(byte[] bytes) throws Exception {
    Path file = folder.resolve("trip.csv");
    Files.write(file, bytes);
    return ImportedTable.read(file);
  }
}
