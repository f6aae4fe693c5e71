package steadypull.store.column;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.zip.GZIPInputStream;

/**
 * Drives of M. Weber, "Automotive OBD-II Dataset", Karlsruhe Institute of Technology, 2023, DOI
 * 10.35097/1130, CC BY 4.0; not part of the program. Ten values are polled in turn and repeated on
 * the rows between: of each row only the value whose turn it is counts, the others are held.
 *
 * @param files gzipped tables
 */
record OpenDrives(List<Path> files) implements MeasuredTrips {
  private static final int CHANNELS = 10;

  /** Where the drives lie is told by this property of the Java machine. */
  static final String PROPERTY = "open.drives";

  static OpenDrives ofProperty() throws IOException {
    try (var found = Files.list(Path.of(System.getProperty(PROPERTY)))) {
      return new OpenDrives(
          found.filter(file -> file.toString().endsWith(".csv.gz")).sorted().toList());
    }
  }

  @Override
  public String name() {
    return files.size() + " open drives";
  }

  @Override
  public List<String> headers() {
    return List.of(
        "engine_coolant_temp[degC]",
        "manifold_pressure[kPa]",
        "engine_speed[r/min]",
        "vehicle_speed[km/h]",
        "intake_air_temp[degC]",
        "air_mass_flow[g/s]",
        "throttle_position[%]",
        "ambient_air_temp[degC]",
        "accelerator_pedal[%]",
        "accelerator_pedal_e[%]");
  }

  @Override
  public int count() {
    return files.size();
  }

  @Override
  public void tell(int trip, SampleSink sink) {
    try (BufferedReader rows =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(files.get(trip))),
                StandardCharsets.UTF_8))) {
      rows.readLine();
      long startMicros = -1;
      int turn = 0;
      for (String row = rows.readLine(); row != null; row = rows.readLine(), turn++) {
        String[] cells = row.split(",", -1);
        long timeMicros = LocalTime.parse(cells[0]).toNanoOfDay() / 1000;
        startMicros = startMicros < 0 ? timeMicros : startMicros;
        int channel = turn % CHANNELS;
        if (channel + 1 < cells.length && !cells[channel + 1].isEmpty()) {
          sink.sample(channel, timeMicros - startMicros, Double.parseDouble(cells[channel + 1]));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
