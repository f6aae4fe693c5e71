package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/**
 * How fast a trip leaves the library as a table, with and without derived channels, beside the same
 * rows joined to text from memory by the shortest code there is: {@code mvn -q -Pbench}. Prints
 * samples for a second of the thread's processor time, round by round.
 */
@Tag("bench")
class TableExportBenchTest {
  private static final int STEPS = 10 * 3_600 * 5;
  private static final long STEP_MICROS = 200_000;
  private static final int ROUNDS = 5;
  private static final ThreadMXBean PROCESSOR = ManagementFactory.getThreadMXBean();

  private static final List<Channel> CHANNELS =
      List.of(
          Channels.VEHICLE_SPEED,
          Channels.ENGINE_SPEED,
          Channels.DELIVERED_TORQUE,
          Channels.REFERENCE_TORQUE,
          Channels.ENGINE_COOLANT_TEMP,
          Channels.CHARGE_AIR_TEMP_OUT,
          Channels.INTAKE_AIR_TEMP,
          Channels.MANIFOLD_PRESSURE,
          Channels.AIR_MASS_FLOW,
          Channels.ENGINE_LOAD,
          Channels.MODULE_VOLTAGE,
          Channels.AMBIENT_AIR_TEMP);

  private static final double[] START = {80, 2000, 60, 900, 90, 50, 30, 180, 90, 70, 14, 20};

  @TempDir private Path folder;

  @Test
  void aTripOfTenHoursLeavesAsATable() throws Exception {
    List<Sample> samples = samples();
    try (TripLibrary library = TripLibrary.open(folder.resolve("library"))) {
      Vehicle vehicle =
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR)
              .withRig(
                  new Rig(
                      OptionalDouble.of(7200),
                      OptionalDouble.of(3.8),
                      OptionalDouble.of(0.011),
                      OptionalDouble.of(0.39)));
      String id =
          library.keep(
              new NewTrip(vehicle, Instant.EPOCH, "", "a table", "1"),
              samples,
              STEPS * STEP_MICROS);
      for (int round = 0; round < ROUNDS; round++) {
        tell("as measured", () -> write(TripSamples.held(library, library.find(id))));
        tell("with derived channels", () -> write(withDerived(library, id)));
        tell("rows joined from memory", () -> joined(samples));
      }
    }
  }

  private static TripSamples withDerived(TripLibrary library, String id) throws LibraryException {
    TripSamples samples = TripSamples.withDerived(library, library.find(id));
    assertThat(samples.channels()).contains(Channels.WHEEL_TORQUE, Channels.ROAD_GRADE);
    return samples;
  }

  private long write(TripSamples samples) throws Exception {
    return TripTable.<LibraryException>write(
        folder.resolve("x.csv"), samples.channels(), samples, ExportChoice.ALL, TransferWatch.NONE);
  }

  /** What must be done at the least: numbers to text, text to a file. */
  private long joined(List<Sample> samples) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(folder.resolve("y.csv"))) {
      StringBuilder line = new StringBuilder("time[s]");
      CHANNELS.forEach(channel -> line.append(',').append(channel.header()));
      long before = -1;
      for (Sample sample : samples) {
        if (sample.timeMicros() != before) {
          before = sample.timeMicros();
          out.append(line.append("\r\n"));
          line.setLength(0);
          line.append(before / 1e6);
        }
        line.append(',').append(sample.value());
      }
      out.append(line.append("\r\n"));
    }
    return samples.size();
  }

  private static void tell(String what, Export export) throws Exception {
    long began = PROCESSOR.getCurrentThreadCpuTime();
    long samples = export.write();
    System.out.printf(
        Locale.ROOT,
        "Export %s: %.2f million samples for a second of processor time%n",
        what,
        samples / 1e6 / ((PROCESSOR.getCurrentThreadCpuTime() - began) / 1e9));
  }

  /** Something that writes a table, and says how many samples there were. */
  private interface Export {
    long write() throws Exception;
  }

  private static List<Sample> samples() {
    SplittableRandom random = new SplittableRandom(1);
    int[] tenths = Arrays.stream(START).mapToInt(start -> (int) Math.round(start * 10)).toArray();
    List<Sample> samples = new ArrayList<>();
    for (int step = 0; step < STEPS; step++) {
      for (int each = 0; each < tenths.length; each++) {
        int usual = (int) Math.round(START[each] * 10);
        tenths[each] += random.nextInt(-3, 4) + (usual - tenths[each]) / 50;
        samples.add(new Sample(CHANNELS.get(each), step * STEP_MICROS, tenths[each] / 10.0));
      }
    }
    return samples;
  }
}
