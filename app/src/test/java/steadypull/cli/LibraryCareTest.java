package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** The library's care at the terminal: backup, restore, check, and reading without a trace. */
class LibraryCareTest {
  private static final NewTrip TRIP =
      new NewTrip(
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
          Instant.parse("2026-07-15T17:45:12Z"),
          "baseline",
          "test",
          "0.1.0");

  @TempDir Path place;

  @Test
  void aBackupBringsTheTripsBack() throws Exception {
    Path folder = libraryOf(2_000);
    Desk desk = new Desk(folder);
    String trips = desk.type("trips", "--json").out();
    Path file = place.resolve("steadypull.backup");

    Desk.Answer backup = desk.type("backup", "--to", file.toString());
    assertThat(backup.status()).isZero();
    assertThat(backup.line()).startsWith("Copied 1 trip with 2000 samples to " + file);
    keep(folder, 10);
    Desk.Answer restore = desk.type("restore", file.toString());

    assertThat(restore.status()).isZero();
    assertThat(restore.out())
        .contains("Restored 1 trip from " + file + ", a backup of 2026-07-15T17:45:12Z.")
        .contains("is now " + folder.resolve("library-replaced-20260715T174512Z.sqlite"));
    assertThat(desk.type("trips", "--json").out()).isEqualTo(trips);
  }

  @Test
  void aBackupOverwritesALetterOnlyWhenToldTo() throws Exception {
    Desk desk = new Desk(libraryOf(10));
    Path letter = Files.writeString(place.resolve("letter.txt"), "Dear workshop");

    Desk.Answer refused = desk.type("backup", "--to", letter.toString());
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err())
        .contains("Could not write a backup", "expected", "found another file");
    assertThat(letter).hasContent("Dear workshop");

    assertThat(desk.type("backup", "--to", letter.toString(), "--overwrite").status()).isZero();
  }

  @Test
  void aRestoreOfALetterIsRefused() throws Exception {
    Desk desk = new Desk(libraryOf(10));
    Path letter = Files.writeString(place.resolve("letter.txt"), "Dear workshop");

    Desk.Answer refused = desk.type("restore", letter.toString());

    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err())
        .contains("Could not restore " + letter, "expected", "found", "Nothing was changed");
    assertThat(desk.type("trips").lines()).hasSize(1);
  }

  @Test
  void aWholeLibraryIsWell() throws Exception {
    Desk desk = new Desk(libraryOf(100));

    Desk.Answer answer = desk.type("check");
    assertThat(answer.status()).isZero();
    assertThat(answer.line()).contains("is well: 1 trip");
    assertThat(desk.type("check", "--json").line())
        .startsWith("{\"integrity\":\"ok\",\"trips\":1,\"damaged\":[]");
  }

  @Test
  void aDamagedLibraryIsSalvagedAndWhatIsLostIsTold() throws Exception {
    Path folder = libraryOf(100_000);
    Path file = folder.resolve("library.sqlite");
    byte[] bytes = Files.readAllBytes(file);
    // Far behind the tables' first pages, so in the samples.
    bytes[bytes.length * 3 / 4] ^= 1;
    Files.write(file, bytes);
    Desk desk = new Desk(folder);

    Desk.Answer look = desk.type("check", "--no-salvage");
    assertThat(look.status()).isEqualTo(1);
    assertThat(look.out()).contains("Lost: trip 20260715T174512Z-", "Nothing was written.");
    assertThat(place.resolve("library-salvaged-1")).doesNotExist();
    Desk.Answer answer = desk.type("check", "--json");

    assertThat(answer.status()).isEqualTo(1);
    JsonNode report = new ObjectMapper().readTree(answer.line());
    assertThat(report.get("integrity").asText()).isEqualTo("damaged");
    assertThat(report.get("trips").asInt()).isEqualTo(1);
    JsonNode part = report.get("damaged").get(0);
    assertThat(part.get("trip").asText()).startsWith("20260715T174512Z-");
    assertThat(part.get("lost_to_s").asDouble()).isGreaterThan(part.get("lost_from_s").asDouble());
    Desk salvaged = new Desk(Path.of(report.get("salvaged").asText()));
    assertThat(salvaged.type("check").status()).isZero();
    assertThat(salvaged.type("trips").out()).contains("Wattle 2");
    assertThat(desk.type("check").out())
        .contains("is damaged", "not as", "  detail: ")
        .doesNotContain("***")
        .contains("Lost: trip 20260715T174512Z-", "library-salvaged-2")
        .contains("An earlier salvage is still in " + place.resolve("library-salvaged-1"));
  }

  // Nobody can tell from a page that is gone what stood on it.
  @Test
  void aLibraryThatCannotBeOpenedIsToldInOurOwnWords() throws Exception {
    Path folder = libraryOf(100);
    Path file = folder.resolve("library.sqlite");
    byte[] bytes = Files.readAllBytes(file);
    Arrays.fill(bytes, 0, 4096, (byte) 0x55);
    Files.write(file, bytes);

    String out = new Desk(folder).type("check").out();

    assertThat(out)
        .contains(
            "detail: the database could not be read to its end",
            "Perhaps lost: trips, events, routes, mappings, vehicles, remembered roads",
            "What could be read, 1 trip, is in")
        .doesNotContain("SQLITE", "put a backup in its place", "Nothing is lost");
  }

  @Test
  void aRestoreIntoAFileIsRefusedInOurOwnWords() throws Exception {
    Path folder = libraryOf(10);
    Path letter = Files.writeString(place.resolve("letter.txt"), "Dear workshop");

    Desk.Answer refused =
        new Desk(letter).type("restore", folder.resolve("library.sqlite").toString());

    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err())
        .contains("Could not restore", "expected a folder", "found a file", "Name another folder")
        .doesNotContain("Exception");
    assertThat(letter).hasContent("Dear workshop");
  }

  // The way that the refusal names is gone to its end.
  @Test
  void aDamagedBackupNamesTheWayToWhatCanBeReadOfIt() throws Exception {
    Path folder = libraryOf(100_000);
    Path backup = place.resolve("steadypull.backup");
    new Desk(folder).type("backup", "--to", backup.toString());
    byte[] bytes = Files.readAllBytes(backup);
    bytes[bytes.length * 3 / 4] ^= 1;
    Files.write(backup, bytes);

    Desk.Answer refused = new Desk(folder).type("restore", backup.toString());

    assertThat(refused.err())
        .contains("a damaged one", "copy it into an empty folder as library.sqlite", "check");
    Path rescue = Files.createDirectory(place.resolve("rescue"));
    Files.copy(backup, rescue.resolve("library.sqlite"));
    Desk.Answer salvaged = new Desk(rescue).type("check");
    assertThat(salvaged.out()).contains("What could be read, 1 trip, is in");
  }

  @Test
  void whoOnlyReadsLeavesNoLibraryBehind() throws Exception {
    Path folder = place.resolve("nothing here");
    Desk desk = new Desk(folder);

    assertThat(desk.type("trips").err()).contains("No trips in " + folder);
    assertThat(desk.type("trips", "--json").line()).isEqualTo("[]");
    assertThat(desk.type("advise", "20260715").status()).isEqualTo(1);
    assertThat(desk.type("export", "20260715", "--to", "out.csv").status()).isEqualTo(1);
    assertThat(desk.type("check").status()).isZero();

    assertThat(folder).doesNotExist();
  }

  @Test
  void whoOpensForWritingIsToldOfATripThatWasLeftBehind() throws Exception {
    Path folder = place.resolve("library");
    String id;
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      id = recorder.tripId();
      recorder.append(sample(0));
      recorder.commit(0);
    }
    Desk desk = new Desk(folder);

    assertThat(desk.type("trips").out()).contains("unfinished");
    assertThat(desk.type("vehicle", "Wattle 2").err())
        .contains("stopped while trip " + id + " was recorded");
    assertThat(desk.type("vehicle", "Wattle 2").err()).doesNotContain(id);
    assertThat(desk.type("trips").out()).doesNotContain("unfinished");
  }

  private Path libraryOf(int samples) throws Exception {
    Path folder = place.resolve("library");
    keep(folder, samples);
    return folder;
  }

  private static void keep(Path folder, int samples) throws Exception {
    List<Sample> all = IntStream.range(0, samples).mapToObj(LibraryCareTest::sample).toList();
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.keep(TRIP, all, samples * 20_000L);
    }
  }

  private static Sample sample(int number) {
    return new Sample(Channels.ENGINE_COOLANT_TEMP, number * 20_000L, Math.sin(number));
  }
}
