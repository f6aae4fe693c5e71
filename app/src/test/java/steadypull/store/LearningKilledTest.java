package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;

/**
 * A program that is killed while it learns leaves each trip either learned or waiting: whoever goes
 * on comes to the same roads, octet for octet, as one that was never disturbed.
 */
class LearningKilledTest {
  private static final int KILLS = 4;
  private static final int MOST_MILLIS = 900;
  private static final Tour TOUR = Country.larkmoor().turnedAround();

  @TempDir Path folder;

  @Test
  void noPassCountsTwiceWhereverTheProgramIsKilled() throws Exception {
    Path calm = folder.resolve("calm");
    Path killed = folder.resolve("killed");
    try (TripLibrary library = TripLibrary.open(calm)) {
      TourDrive drive = TourDrive.of(TOUR, 1);
      for (int day = 0; day < KILLS + 1; day++) {
        ToldTours.keep(library, drive, day);
      }
    }
    Files.createDirectory(killed);
    Files.copy(LibraryFile.in(calm), LibraryFile.in(killed));
    SplittableRandom random = new SplittableRandom(17);
    for (int kill = 0; kill < KILLS; kill++) {
      learnAndKill(killed, random.nextInt(MOST_MILLIS));
    }
    try (TripLibrary one = TripLibrary.open(calm);
        TripLibrary other = TripLibrary.open(killed)) {
      ToldTours.learn(one);
      ToldTours.learn(other);
    }
    assertThat(KnownRoadsTest.tiles(killed)).isEqualTo(KnownRoadsTest.tiles(calm)).isNotEmpty();
  }

  /** Killed so long after it has begun to learn. */
  private static void learnAndKill(Path folder, int millis)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                Learner.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    // The first line says that it learns from now on; what comes afterwards is left unread.
    assertThat(process.inputReader().readLine()).isEqualTo("learning");
    process.waitFor(Duration.ofMillis(millis));
    process.toHandle().destroyForcibly();
    process.waitFor();
  }

  /** A program of its own that learns until it is killed. */
  static final class Learner {
    private Learner() {}

    public static void main(String[] arguments) throws LibraryException {
      try (TripLibrary library = TripLibrary.open(Path.of(arguments[0]))) {
        System.out.println("learning");
        ToldTours.learn(library);
      }
    }
  }
}
