package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A library that is named by mistake where a file should go stays what it is. */
class LibraryNotWrittenOverTest {
  @TempDir private Path folder;
  private Desk desk;
  private String trip = "";
  private byte[] before = {};

  @BeforeEach
  void fillTheLibrary() throws Exception {
    desk = new Desk(folder.resolve("library"));
    Path table =
        Files.writeString(
            folder.resolve("a.csv"),
            """
            time[s],engine_coolant_temp[degC],latitude[deg],longitude[deg]
            0,90,1,2
            1,91,1,2.1
            """);
    trip = desk.type("import", table.toString(), "--vehicle", "Wattle 2").line();
    before = Files.readAllBytes(library());
  }

  @Test
  void noExportReplacesALibraryWhateverItIsCalled() throws Exception {
    Path copy = Files.copy(library(), folder.resolve("copy.csv"));
    Path link = Files.createSymbolicLink(folder.resolve("x.trip"), library());
    Path track = Files.copy(library(), folder.resolve("copy.gpx"));
    for (Path place : List.of(copy, link, track)) {
      Desk.Answer answer = desk.type("export", trip, "--to", place.toString());

      assertThat(answer.status()).as(place.toString()).isEqualTo(1);
      assertThat(answer.err()).contains("which is not written over");
    }
    assertThat(desk.type("export", trip, "--to", library().toString()).status()).isEqualTo(2);
    Desk.Answer answer = desk.type("vehicle", "Wattle 2", "--export", library().toString());
    assertThat(answer.status()).isEqualTo(1);
    assertThat(Files.readAllBytes(library())).isEqualTo(before);
    assertThat(Files.readAllBytes(copy)).isEqualTo(before);
  }

  @Test
  void aTripFileIsReplacedByAnother() {
    String file = folder.resolve("x.trip").toString();

    assertThat(desk.type("export", trip, "--to", file).status()).isZero();
    assertThat(desk.type("export", trip, "--to", file).status()).isZero();
    assertThat(desk.type("import", file).line()).isEqualTo(trip);
  }

  @Test
  void aHeaderThatIsNearlyAChannelOfOursIsAskedAbout() throws Exception {
    Path table = Files.writeString(folder.resolve("b.csv"), "time[s],coolant_temp[degC]\n0,90\n");

    Desk.Answer answer = desk.type("import", table.toString());

    assertThat(answer.status()).isZero();
    assertThat(answer.err())
        .contains("Kept coolant_temp[degC] as a channel of its own. Did you mean");
  }

  private Path library() {
    return folder.resolve("library/library.sqlite");
  }
}
