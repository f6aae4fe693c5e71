package steadypull.exchange;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Sample;

/** Writes foreign tables into a folder and reads them through mappings. */
final class ForeignTables {
  static final Instant FILE_TIME = Instant.parse("2026-07-15T10:00:00Z");

  /** What was read of a table. */
  record Read(IncomingTable table, List<Sample> samples, long endMicros) {
    List<Long> micros() {
      return samples.stream().map(Sample::timeMicros).toList();
    }

    List<Double> values() {
      return samples.stream().map(Sample::value).toList();
    }
  }

  private final Path folder;

  ForeignTables(Path folder) {
    this.folder = folder;
  }

  Path file(String text) throws Exception {
    return file(text, StandardCharsets.UTF_8);
  }

  Path file(String text, Charset charset) throws Exception {
    Path file = Files.write(folder.resolve("foreign.csv"), text.getBytes(charset));
    return Files.setLastModifiedTime(file, FileTime.from(FILE_TIME));
  }

  Read read(String text, String toml) throws Exception {
    return read(file(text), new MappingText("map.toml", toml, true));
  }

  static Read read(Path file, MappingText mapping) throws Exception {
    IncomingTable table = TripTable.open(file, mapping, TableZone.here(ZoneOffset.UTC));
    List<Sample> samples = new ArrayList<>();
    long end = table.read(samples::add, TransferWatch.NONE);
    return new Read(table, samples, end);
  }
}
