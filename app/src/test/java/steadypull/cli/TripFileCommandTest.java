package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trip files between two libraries. */
class TripFileCommandTest {
  @TempDir private Path folder;
  private Desk desk;
  private Desk other;
  private String trip;
  private Path table;
  private Path file;

  @BeforeEach
  void exportATrip() throws Exception {
    desk = new Desk(folder.resolve("library"));
    other = new Desk(folder.resolve("other"));
    table =
        Files.writeString(
            folder.resolve("run.csv"),
            "time[s],vehicle_speed[km/h],latitude[deg],longitude[deg]\n0,80,1.5,2.5\n");
    trip = desk.type("import", table.toString(), "--vehicle", "Wattle 2", "--note", "hot").line();
    file = folder.resolve("x.trip");
    assertThat(desk.type("export", trip, "--to", file.toString()).err())
        .contains("Wrote 3 samples to " + file);
  }

  @Test
  void theSameFileTwiceGivesTheSameTrip() {
    assertThat(other.type("import", file.toString()).line()).isEqualTo(trip);
    Desk.Answer again = other.type("import", file.toString());

    assertThat(again.line()).isEqualTo(trip);
    assertThat(again.err()).contains("x.trip: The trip is here already.");
    assertThat(other.type("trip", trip).out()).isEqualTo(desk.type("trip", trip).out());
    assertThat(other.type("vehicle", "Wattle 2").out())
        .isEqualTo(desk.type("vehicle", "Wattle 2").out());
  }

  @Test
  void whatIsLeftAsItIsHereIsTold() {
    other.type("import", file.toString(), "--note", "our own words", "--tag", "borrowed");
    Desk.Answer again = other.type("import", file.toString());

    assertThat(again.err()).contains("Left as it is here, though the file tells otherwise: note.");
    assertThat(other.type("trip", trip).out()).contains("our own words", "borrowed");
  }

  @Test
  void positionsStayAtHomeIfWanted() {
    desk.type("export", trip, "--to", file.toString(), "--no-positions");
    other.type("import", file.toString());

    assertThat(other.type("trip", trip).out()).contains("vehicle_speed").doesNotContain("latitude");
  }

  @Test
  void aFaultInOneFileLeavesTheLibraryAsItWas() throws Exception {
    Path bad = Files.writeString(folder.resolve("bad.trip"), "no trip");
    Desk.Answer answer = other.type("import", table.toString(), file.toString(), bad.toString());

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("Could not read " + bad, "expected a trip file");
    assertThat(other.type("trips").out()).isEmpty();
  }

  @Test
  void tablesAndTripFilesComeInTogether() throws Exception {
    Path another = Files.writeString(folder.resolve("b.csv"), "time[s],gear[1]\n0,3\n1,4\n");
    Desk.Answer answer = other.type("import", another.toString(), file.toString());

    assertThat(answer.lines()).hasSize(2).contains(trip);
    assertThat(other.type("trips").lines()).hasSize(2);
  }

  @Test
  void aTableAndTheTripFileOfItsTripAreOneTrip() {
    Desk.Answer answer = other.type("import", table.toString(), file.toString());

    assertThat(answer.lines().getFirst()).isEqualTo(answer.lines().getLast());
    assertThat(answer.err()).contains("The trip is here already.");
    assertThat(other.type("trips").lines()).hasSize(1);
  }

  @Test
  void aTripFileBringsItsOwnVehicle() {
    Desk.Answer answer = other.type("import", file.toString(), "--vehicle", "Mine");

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("--vehicle", "brings its own vehicle");
    assertThat(folder.resolve("other")).as("no library for a mistake").doesNotExist();
  }
}
