package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

class TripTableTest {
  @TempDir Path folder;

  @Test
  void anEmptyCellIsNoSample() throws Exception {
    ImportedTable table =
        read("time[s],engine_coolant_temp[degC],vehicle_speed[km/h]\r\n0,90,\r\n0.5,,72.5\r\n9,,");

    assertThat(table.samples())
        .containsExactly(
            new Sample(Channels.ENGINE_COOLANT_TEMP, 0, 90),
            new Sample(Channels.VEHICLE_SPEED, 500_000, 72.5));
    assertThat(table.endMicros()).isEqualTo(9_000_000);
    assertThat(table.channels())
        .containsExactly(Channels.ENGINE_COOLANT_TEMP, Channels.VEHICLE_SPEED);
  }

  @Test
  void samplesOfOneTimeShareARow() throws Exception {
    String text =
        written(
            List.of(
                new Sample(Channels.VEHICLE_SPEED, 1_500_000, 80),
                new Sample(new Channel("axle_load", "t"), 0, 2.5),
                new Sample(Channels.ENGINE_COOLANT_TEMP, 1_500_000, 96.25)),
            ExportChoice.ALL);

    assertThat(text)
        .isEqualTo(
            """
            time[s],engine_coolant_temp[degC],vehicle_speed[km/h],axle_load[t]
            0,,,2.5
            1.5,96.25,80,
            """
                .replace("\n", "\r\n"));
  }

  @Test
  void aSecondSampleInOneMicrosecondMovesToTheNextFreeOne() throws Exception {
    Path file = folder.resolve("trip.csv");
    write(
        file,
        List.of(
            new Sample(Channels.VEHICLE_SPEED, 10, 1),
            new Sample(Channels.VEHICLE_SPEED, 10, 2),
            new Sample(Channels.VEHICLE_SPEED, 10, 3),
            new Sample(Channels.VEHICLE_SPEED, 11, 4),
            new Sample(Channels.ENGINE_COOLANT_TEMP, 11, 90)));

    assertThat(ImportedTable.read(file).samples())
        .containsExactly(
            new Sample(Channels.VEHICLE_SPEED, 10, 1),
            new Sample(Channels.ENGINE_COOLANT_TEMP, 11, 90),
            new Sample(Channels.VEHICLE_SPEED, 11, 2),
            new Sample(Channels.VEHICLE_SPEED, 12, 3),
            new Sample(Channels.VEHICLE_SPEED, 13, 4));
  }

  @Test
  void theChoiceLeavesOutWhatMustNotGo() throws Exception {
    List<Sample> samples =
        List.of(
            new Sample(Channels.LATITUDE, 0, 1),
            new Sample(Channels.LONGITUDE, 0, 2),
            new Sample(Channels.ALTITUDE, 0, 3),
            new Sample(Channels.ROAD_GRADE, 0, 4));

    assertThat(written(samples, new ExportChoice(true, true))).startsWith("time[s],altitude[m]\r");
    assertThat(written(samples, new ExportChoice(true, false)))
        .startsWith("time[s],latitude[deg],longitude[deg],altitude[m]\r");
    assertThat(written(samples, new ExportChoice(false, true)))
        .startsWith("time[s],altitude[m],road_grade[%]\r");
  }

  @Test
  void numbersAreWrittenShortAndExact() {
    assertThat(NumberCell.text(-40)).isEqualTo("-40");
    assertThat(NumberCell.text(0.1)).isEqualTo("0.1");
    assertThat(NumberCell.text(1200)).isEqualTo("1200");
    assertThat(NumberCell.text(12345678.5)).isEqualTo("12345678.5");
    assertThat(NumberCell.text(Double.MIN_VALUE)).isEqualTo("4.9E-324");
    assertThat(NumberCell.text(Double.MAX_VALUE)).isEqualTo("1.7976931348623157E+308");
    assertThat(NumberCell.seconds(12_000_001)).isEqualTo("12.000001");
    assertThat(NumberCell.seconds(600_000_000)).isEqualTo("600");
  }

  @Test
  void timesAreTakenToTheNearestMicrosecond() throws Exception {
    ImportedTable table =
        read("time[s],gear[1]\n1e-6,1\n0.0000024999,2\n1.2E1,3\n13.0000005,4\n31000000.123456,5");

    assertThat(table.samples())
        .extracting(Sample::timeMicros)
        .containsExactly(1L, 2L, 12_000_000L, 13_000_000L, 31_000_000_123_456L);
  }

  @Test
  void aFaultWhileWritingKeepsTheOldFile() throws Exception {
    Path file = folder.resolve("trip.csv");
    Files.writeString(file, "old");

    assertThatThrownBy(
            () ->
                new NewFile(file)
                    .fill(
                        out -> {
                          out.write("new");
                          throw new IOException("No space left on device");
                        }))
        .isInstanceOf(IOException.class);

    assertThat(file).hasContent("old");
    assertThat(folder).isDirectoryContaining(found -> found.equals(file));
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  // Somebody keeps the newest table behind a link; writing must not cut the link.
  @Test
  void aLinkIsFollowedWhenATableIsWritten() throws Exception {
    Path file = Files.writeString(folder.resolve("behind.csv"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("newest.csv"), file);

    write(link, List.of(new Sample(Channels.VEHICLE_SPEED, 0, 80)));

    assertThat(link).isSymbolicLink();
    assertThat(file).content().startsWith("time[s],vehicle_speed[km/h]");
  }

  @Test
  void aPlaceThatTakesNoFileIsNamed() {
    assertThatThrownBy(() -> write(folder.resolve("none/trip.csv"), List.of()))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("none/trip.csv")
        .hasMessageContaining("found no folder");
    assertThatThrownBy(() -> write(folder, List.of()))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("found a folder");
  }

  private ImportedTable read(String text) throws Exception {
    Path file = folder.resolve("read.csv");
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    return ImportedTable.read(file);
  }

  private static String written(List<Sample> samples, ExportChoice choice) throws IOException {
    StringWriter out = new StringWriter();
    TableWriter.write(
        out, channelsOf(samples), samples::forEach, choice, TransferWatch.NONE, samples.size());
    return out.toString();
  }

  private static long write(Path file, List<Sample> samples) throws TableException {
    return TripTable.write(
        file, channelsOf(samples), samples::forEach, ExportChoice.ALL, TransferWatch.NONE);
  }

  private static List<Channel> channelsOf(List<Sample> samples) {
    return samples.stream().map(Sample::channel).distinct().toList();
  }
}
