package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import steadypull.tablet.Awake;
import steadypull.tablet.Power;
import steadypull.tablet.Tablet;
import steadypull.tablet.TabletNews;

/** Whole drives on hand-made tablets. */
@Timeout(300)
class TabletOnDriveTest {
  private static final String ADDRESS = "demo:cool-day?speed=max&start=300";

  @TempDir private Path folder;

  private final List<String> awake = new CopyOnWriteArrayList<>();
  private final CountDownLatch told = new CountDownLatch(1);

  private Awake hold() {
    awake.add("held by " + Thread.currentThread().getName());
    return new Awake.Held(
        () -> true, () -> awake.add("released by " + Thread.currentThread().getName()));
  }

  /** Lets a drive begin on a tablet and waits until the tablet has told something. */
  private DriveOutcome driveUntilTold(Tablet tablet, PipelineOutput observer) throws Exception {
    try (DemoDrives drives = new DemoDrives(folder)) {
      RunningDrive drive =
          drives.desk().on(tablet).begin(DemoDrives.request(ADDRESS, DriveEnd.never()), observer);
      told.await();
      drive.close();
      return drive.outcome().join();
    }
  }

  private PipelineOutput untilTold(List<TabletReport> reports) {
    return new PipelineOutput() {
      @Override
      public void tablet(TabletReport report) {
        reports.add(report);
        told.countDown();
      }
    };
  }

  // Windows forgets what a thread needs when that thread ends: the same one holds and releases.
  @Test
  void aTabletIsKeptAwakeForAsLongAsTheDriveLasts() throws Exception {
    List<TabletReport> reports = new CopyOnWriteArrayList<>();
    Tablet tablet =
        new Tablet(this::hold, () -> new Power.Battery(50, false, true), Optional::empty);

    driveUntilTold(tablet, untilTold(reports));

    assertThat(awake).containsExactly("held by tablet", "released by tablet");
    assertThat(reports)
        .extracting(TabletReport::news)
        .containsExactly(new TabletNews.OnBattery(50));
  }

  @Test
  void aTabletThatCannotBeWatchedEndsNothing() throws Exception {
    List<TabletReport> reports = new CopyOnWriteArrayList<>();
    Tablet tablet =
        new Tablet(
            this::hold,
            () -> {
              told.countDown();
              throw new IllegalStateException("no such folder");
            },
            Optional::empty);

    DriveOutcome outcome = driveUntilTold(tablet, untilTold(reports));

    assertThat(outcome.unkept()).isEmpty();
    assertThat(awake).hasSize(2);
  }

  @Test
  void aSimulatedVehicleWaitsForASleepingTabletSoNothingIsSaid() throws Exception {
    List<TabletReport> reports = new CopyOnWriteArrayList<>();
    Tablet sleepy =
        new Tablet(
            () -> new Awake.NotHeld("no bus"),
            () -> {
              told.countDown();
              return new Power.CouldNotTell();
            },
            Optional::empty);

    driveUntilTold(sleepy, untilTold(reports));

    assertThat(reports).isEmpty();
  }
}
