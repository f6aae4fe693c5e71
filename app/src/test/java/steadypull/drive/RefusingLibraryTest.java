package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.advice.AdviceEvent;
import steadypull.store.TripEntry;
import steadypull.store.TripSummary;

/** A library that refuses samples in the middle of a drive, as a full disk does. */
class RefusingLibraryTest {
  private static final String REFUSE =
      "create trigger refuse before insert on segment begin select raise(abort, 'refused'); end";
  private static final String ACCEPT = "drop trigger refuse";

  @TempDir private Path folder;

  @Test
  void aDriveWhoseEndIsRefusedSaysSoAndKeepsWhatWasWrittenBefore() throws Exception {
    Heard heard = new Heard();
    DriveOutcome outcome;
    TripSummary left;
    try (DemoDrives demo = new DemoDrives(folder)) {
      outcome =
          demo.drive(
              "demo:cool-day?speed=max", 30, new Meddling(heard, folder, Map.of(10, REFUSE)));
      left = demo.library().find(outcome.tripId().orElseThrow());
    }

    assertThat(outcome.unkept())
        .hasValueSatisfying(why -> assertThat(why).contains("write the trip"));
    assertThat(left.sealed()).isFalse();
    assertThat(left.durationSeconds()).isBetween(9.0, 11.0);
    assertThat(heard.last().recording())
        .isInstanceOfSatisfying(
            RecordingState.Failed.class,
            failed -> assertThat(failed.reason()).contains("kept in memory"));
  }

  @Test
  void whatWasRefusedForAWhileIsWrittenWhenTheLibraryTakesItAgain() throws Exception {
    Heard heard = new Heard();
    List<TripEntry> kept = new ArrayList<>();
    DriveOutcome outcome;
    try (DemoDrives demo = new DemoDrives(folder)) {
      outcome =
          demo.drive(
              "demo:cool-day?speed=max",
              30,
              new Meddling(heard, folder, Map.of(10, REFUSE, 20, ACCEPT)));
      demo.library().replay(outcome.tripId().orElseThrow(), kept::add);
    }

    assertThat(heard.seconds)
        .extracting(DriveSnapshot::recording)
        .hasAtLeastOneElementOfType(RecordingState.Failed.class);
    assertThat(heard.last().recording()).isInstanceOf(RecordingState.Recording.class);
    assertThat(outcome.unkept()).isEmpty();
    assertThat(kept).isEqualTo(heard.entries);
  }

  /** Changes the library's mind after so many seconds of the trip. */
  private record Meddling(Heard heard, Path folder, Map<Integer, String> changes)
      implements PipelineOutput {
    @Override
    public void entry(TripEntry entry) {
      heard.entry(entry);
    }

    @Override
    public void advice(AdviceEvent event) {
      heard.advice(event);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      heard.second(snapshot);
      String change = changes.get((int) (snapshot.timeMicros() / 1_000_000));
      // Seconds also pass before the trip begins.
      if (change != null && !(snapshot.recording() instanceof RecordingState.Waiting)) {
        change(change);
      }
    }

    private void change(String statement) {
      String address = "jdbc:sqlite:" + folder.resolve("library.sqlite");
      try (Connection connection = DriverManager.getConnection(address);
          Statement meddling = connection.createStatement()) {
        meddling.execute(statement);
      } catch (SQLException unexpected) {
        throw new IllegalStateException(unexpected);
      }
    }
  }
}
