package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A day of recording at some 50 samples a second needs no more memory at its end than before. */
@Tag("soak")
class LongRecordingTest {
  private static final int HOURS = 24;
  private static final int SECONDS_AN_HOUR = 3_600;
  private static final int SAMPLES_A_SECOND = 50;

  /** What an hour may add for good: the list of gaps and the like; estimated. */
  private static final long MOST_GROWTH_OCTETS = 2_000_000;

  private static final List<Channel> CHANNELS =
      List.of(
          Channels.ENGINE_COOLANT_TEMP,
          Channels.VEHICLE_SPEED,
          Channels.ENGINE_SPEED,
          Channels.ENGINE_LOAD,
          Channels.INTAKE_AIR_TEMP);

  @TempDir Path folder;

  @Test
  void memoryStaysFlatForADay() throws Exception {
    SplittableRandom random = new SplittableRandom(24);
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
            Instant.parse("2026-07-15T17:45:12Z"),
            "",
            "test",
            "0.1.0");
    long afterFirstHour = 0;
    long afterLastHour = 0;
    long largestLog = 0;
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(trip)) {
      // Whether each second waits for the disk makes no difference to memory.
      recorder.pragma("synchronous = off");
      for (int hour = 0; hour < HOURS; hour++) {
        for (int second = 0; second < SECONDS_AN_HOUR; second++) {
          recordSecond(recorder, random, (long) hour * SECONDS_AN_HOUR + second);
        }
        largestLog = Math.max(largestLog, octets("library.sqlite-wal"));
        afterLastHour = heapOctets();
        afterFirstHour = hour == 0 ? afterLastHour : afterFirstHour;
      }
      recorder.seal((long) HOURS * SECONDS_AN_HOUR * 1_000_000);
      assertThat(library.find(recorder.tripId()).samples())
          .isEqualTo((long) HOURS * SECONDS_AN_HOUR * SAMPLES_A_SECOND);
    }
    System.out.printf(
        "%d h, %d samples: heap after the first hour %d kB, after the last %d kB; library %d kB,"
            + " log at most %d kB%n",
        HOURS,
        HOURS * SECONDS_AN_HOUR * SAMPLES_A_SECOND,
        afterFirstHour / 1_000,
        afterLastHour / 1_000,
        octets("library.sqlite") / 1_000,
        largestLog / 1_000);
    assertThat(afterLastHour).isLessThan(afterFirstHour + MOST_GROWTH_OCTETS);
  }

  private static void recordSecond(TripRecorder recorder, SplittableRandom random, long second)
      throws LibraryException {
    for (int number = 0; number < SAMPLES_A_SECOND; number++) {
      long micros = second * 1_000_000 + number * 20_000L + random.nextInt(2_000);
      // Nobody's values: what a byte of the bus can say, wandering slowly.
      double value = Math.rint(120 + 100 * Math.sin(second / 300.0) + random.nextInt(-2, 3));
      recorder.append(new Sample(CHANNELS.get(number % CHANNELS.size()), micros, value));
    }
    recorder.commit((second + 1) * 1_000_000);
  }

  private long octets(String name) throws IOException {
    Path file = folder.resolve(name);
    return Files.exists(file) ? Files.size(file) : 0;
  }

  private static long heapOctets() {
    MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
    memory.gc();
    memory.gc();
    return memory.getHeapMemoryUsage().getUsed();
  }
}
