package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.NewTrip;
import steadypull.store.PortableTrip;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

class TripFileTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
  private static final NewTrip TRIP =
      new NewTrip(WATTLE, Instant.parse("2026-07-15T17:45:12Z"), "", "x", "1");

  @TempDir Path folder;
  private TripLibrary library;
  private TripSummary trip;
  private Path file;

  @BeforeEach
  void keepATrip() throws Exception {
    library = TripLibrary.open(folder.resolve("library"));
    List<Sample> samples =
        List.of(
            new Sample(Channels.VEHICLE_SPEED, 0, 80),
            new Sample(Channels.LATITUDE, 0, 1.5),
            new Sample(Channels.LONGITUDE, 0, 2.5),
            new Sample(Channels.ROAD_GRADE, 0, 3.5));
    trip = library.find(library.keep(TRIP, samples, 5));
    file = folder.resolve("x.trip");
  }

  @AfterEach
  void close() {
    library.close();
  }

  private List<Channel> written(ExportChoice choice) throws Exception {
    TripFile.write(library, trip, file, choice, TransferWatch.NONE);
    try (PortableTrip written = TripFile.open(file)) {
      return written.summary().channels();
    }
  }

  private int emptyPages() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet told = statement.executeQuery("PRAGMA freelist_count")) {
      return told.getInt(1);
    }
  }

  @Test
  void whatIsNotChosenDoesNotLeaveTheLibrary() throws Exception {
    assertThat(written(ExportChoice.ALL)).hasSize(4);
    assertThat(written(new ExportChoice(true, false)))
        .containsExactly(Channels.VEHICLE_SPEED, Channels.LATITUDE, Channels.LONGITUDE);
    assertThat(written(new ExportChoice(true, true))).containsExactly(Channels.VEHICLE_SPEED);
    // Vacuumed, so that what was left out does not lie in the empty parts of the file either.
    assertThat(emptyPages()).isZero();
  }

  @Test
  void aTripThatIsRecordedIsNotWritten() throws Exception {
    try (TripRecorder recorder = library.begin(TRIP)) {
      recorder.commit(0);
      TripSummary running = library.find(recorder.tripId());

      assertThatThrownBy(
              () -> TripFile.write(library, running, file, ExportChoice.ALL, TransferWatch.NONE))
          .isInstanceOf(TableException.class)
          .hasMessageContaining("still being recorded");
    }
    assertThat(file).doesNotExist();
  }

  @Test
  void aPlaceThatTakesNoFileIsNamedAndNothingIsLeftThere() {
    Path nowhere = folder.resolve("none/x.trip");

    assertThatThrownBy(
            () -> TripFile.write(library, trip, nowhere, ExportChoice.ALL, TransferWatch.NONE))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("Could not write " + nowhere)
        .hasMessageContaining("no folder");
    assertThatThrownBy(
            () -> TripFile.write(library, trip, folder, ExportChoice.ALL, TransferWatch.NONE))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("found a folder");
  }

  @Test
  void onlyAPlainFileIsOpened() throws Exception {
    TripFile.write(library, trip, file, ExportChoice.ALL, TransferWatch.NONE);
    Path link = Files.createSymbolicLink(folder.resolve("link.trip"), file);

    assertRefused(link, "a link to another place");
    assertRefused(folder, "a folder");
    assertRefused(folder.resolve("nosuch.trip"), "no file of that name");
  }

  private static void assertRefused(Path file, String found) {
    assertThatThrownBy(() -> TripFile.open(file))
        .isInstanceOf(TableException.class)
        .hasMessageContaining("Could not read " + file + ": expected a trip file, found " + found)
        .hasMessageContaining("Nothing was imported");
  }
}
