package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.store.TripLibrary;

/**
 * What a person waits for who starts the program, lists the trips, taps one of 10 h with 20
 * channels at 5 Hz, looks at windows of it and taps another: {@code mvn -q -Pbench}. Each program
 * is a process of its own, the ways one after the other in turn, so that all meet the same machine.
 */
@Tag("bench")
class TapsBenchTest {
  private static final int PROGRAMS = 9;

  @TempDir Path folder;

  @Test
  void printWaits() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.addTrips(TappedTrips::add);
    }
    Map<TapProgram.Way, Map<String, double[]>> waits = new EnumMap<>(TapProgram.Way.class);
    for (int program = 0; program < PROGRAMS; program++) {
      for (TapProgram.Way way : TapProgram.Way.values()) {
        for (String line : run(way)) {
          int colon = line.indexOf(": ");
          waits.computeIfAbsent(way, _ -> new TreeMap<>())
                  .computeIfAbsent(line.substring(0, colon), _ -> new double[PROGRAMS])[program] =
              Double.parseDouble(line.substring(colon + 2));
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "load %.1f; ms, median and worst of %d programs%n",
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
        PROGRAMS);
    waits.forEach((way, told) -> told.forEach((what, millis) -> print(way, what, millis)));
    assertThat(waits).hasSize(TapProgram.Way.values().length);
  }

  private static void print(TapProgram.Way way, String what, double[] millis) {
    Arrays.sort(millis);
    System.out.printf(
        Locale.ROOT,
        "%-9s %-45s %6.1f %6.1f%n",
        way,
        what,
        millis[millis.length / 2],
        millis[millis.length - 1]);
  }

  private List<String> run(TapProgram.Way way) throws IOException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty("java.class.path"),
                TapProgram.class.getName(),
                folder.toString(),
                way.name())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    return process.inputReader().lines().toList();
  }
}
