package steadypull.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceLine;
import steadypull.drive.DriveEnd;
import steadypull.drive.DriveOutcome;
import steadypull.drive.DriveRequest;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.LiveDrives;
import steadypull.drive.Pace;
import steadypull.drive.PipelineOutput;
import steadypull.drive.ReceiverNews;
import steadypull.drive.RunningDrive;
import steadypull.drive.TabletReport;
import steadypull.ui.DrivePictures;

/**
 * The window's drive on a machine without a display: advice in the terminal as it comes, and
 * pictures of the Drive screen afterwards.
 */
final class TerminalDrive {
  private final SteadypullCommand main;
  private final LiveDrives drives;

  TerminalDrive(SteadypullCommand main, LiveDrives drives) {
    this.main = main;
    this.drives = drives;
  }

  /** Drives until the end, Ctrl-C included; returns the exit status. */
  int run(String port, String vehicle) throws Exception {
    main.out().println("No display was found, so this drive runs in the terminal.");
    main.out().flush();
    // Made before the drive: when Ctrl-C ends it, no toolkit can be started any more.
    DrivePictures pictures =
        new DrivePictures(main.locale(), main.format().system(), ZoneId.systemDefault());
    Watching watching = new Watching(new DriveProgress(main.out(), main.format()));
    DriveRequest request =
        new DriveRequest(port, vehicle, "", Pace.POLITE, DriveEnd.withScenario());
    RunningDrive drive = drives.begin(request, watching);
    return StoppableDrive.await(drive, outcome -> report(outcome, pictures, watching));
  }

  private int report(DriveOutcome outcome, DrivePictures pictures, Watching watching) {
    Optional<String> failure = DriveVerdict.failure(outcome);
    failure.ifPresent(main.err()::println);
    Optional<String> trip = outcome.lastTripId();
    if (trip.isEmpty()) {
      return 1;
    }
    main.out().printf("Recorded as trip %s in %s.%n", trip.get(), main.libraryFolder());
    try {
      paint(pictures, watching.moments());
    } catch (IOException unwritable) {
      main.err().println("Could not write the pictures: " + Explanation.of(unwritable));
      return 1;
    } finally {
      main.out().flush();
    }
    return failure.isPresent() ? 1 : 0;
  }

  private void paint(DrivePictures pictures, Map<AdviceLine.State, DriveSnapshot> moments)
      throws IOException {
    Path folder = main.libraryFolder().resolve("pictures").toAbsolutePath();
    List<Path> written = new ArrayList<>();
    for (Map.Entry<AdviceLine.State, DriveSnapshot> moment : moments.entrySet()) {
      for (boolean night : new boolean[] {false, true}) {
        Path file = folder.resolve(PictureName.of(moment.getKey(), night));
        pictures.write(moment.getValue(), night, file);
        written.add(file);
      }
    }
    main.out().println("Pictures of the Drive screen:");
    written.forEach(main.out()::println);
  }

  /** Remembers one telling moment of each state of the advice line. Pipeline thread, then main. */
  private static final class Watching implements PipelineOutput {
    /** A state is pictured when it has stood for so long, or at its last moment. */
    private static final long SETTLED_MICROS = 8_000_000;

    private final DriveProgress progress;
    private final Map<AdviceLine.State, DriveSnapshot> moments =
        Collections.synchronizedMap(new EnumMap<>(AdviceLine.State.class));
    private AdviceLine.State state = AdviceLine.State.LEARNING;
    private long sinceMicros;

    Watching(DriveProgress progress) {
      this.progress = progress;
    }

    Map<AdviceLine.State, DriveSnapshot> moments() {
      return new EnumMap<>(moments);
    }

    @Override
    public void advice(AdviceEvent event) {
      progress.advice(event);
    }

    @Override
    public void receiver(ReceiverNews news) {
      progress.receiver(news);
    }

    @Override
    public void tablet(TabletReport report) {
      progress.tablet(report);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      progress.second(snapshot);
      if (snapshot.link().state() != LinkSummary.State.CONNECTED) {
        return;
      }
      if (snapshot.advice().state() != state) {
        state = snapshot.advice().state();
        sinceMicros = snapshot.timeMicros();
      }
      if (snapshot.timeMicros() - sinceMicros <= SETTLED_MICROS
          || state == AdviceLine.State.HOLDS) {
        moments.put(state, snapshot);
      }
    }
  }
}
