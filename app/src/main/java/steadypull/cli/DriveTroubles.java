package steadypull.cli;

import java.io.PrintWriter;
import java.util.HashSet;
import java.util.Set;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RawCapture;
import steadypull.drive.ReceiverNews;
import steadypull.drive.RecordingState;
import steadypull.drive.TabletReport;
import steadypull.tablet.TabletNews;

/**
 * Tells a terminal only what goes wrong with link and recording, once until it is right again, and
 * that it is right again. Pipeline thread only.
 */
final class DriveTroubles implements PipelineOutput {
  private final PrintWriter out;
  private final QuantityFormat format;
  private final Set<String> linkTroubles = new HashSet<>();
  private final Set<String> recordingTroubles = new HashSet<>();

  DriveTroubles(PrintWriter out, QuantityFormat format) {
    this.out = out;
    this.format = format;
  }

  /** The receiver's absence is normal: it is told once and not again before it was found. */
  @Override
  public void receiver(ReceiverNews news) {
    if (news.state() == ReceiverNews.State.ABSENT
        || news.state() == ReceiverNews.State.OUT_OF_PACE) {
      tell(news.timeMicros(), ReceiverWords.of(news));
    }
  }

  @Override
  public void tablet(TabletReport report) {
    if (!(report.news() instanceof TabletNews.Charging)) {
      tell(report.timeMicros(), report.sentence());
    }
  }

  @Override
  public void captured(RawCapture.Kept kept) {
    kept.trouble()
        .ifPresent(
            trouble -> {
              out.println(trouble);
              out.flush();
            });
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    tellLink(snapshot);
    tellRecording(snapshot);
  }

  private void tellLink(DriveSnapshot snapshot) {
    LinkSummary link = snapshot.link();
    switch (link.state()) {
      case LOST, VEHICLE_SILENT, BUS_FAULT, BUS_BUSY, ADAPTER_FAULT, ENGINE_OFF ->
          tellOnce(snapshot, linkTroubles, LinkWords.of(link));
      case CONNECTED -> tellRecovery(snapshot, linkTroubles, LinkWords.of(link));
      case OPENING, SEARCHING, CLOSED -> {}
    }
  }

  /** Tells that samples are not being kept, and that they are kept again. */
  void tellRecording(DriveSnapshot snapshot) {
    switch (snapshot.recording()) {
      case RecordingState.Failed(String reason) ->
          tellOnce(snapshot, recordingTroubles, "not recording: " + reason);
      case RecordingState.Recording _ ->
          tellRecovery(snapshot, recordingTroubles, "recording again");
      case RecordingState.Waiting _ -> {}
      case RecordingState.Off _ -> {}
    }
  }

  private void tellOnce(DriveSnapshot snapshot, Set<String> told, String trouble) {
    if (told.add(trouble)) {
      tell(snapshot.timeMicros(), trouble);
    }
  }

  private void tellRecovery(DriveSnapshot snapshot, Set<String> told, String recovery) {
    if (!told.isEmpty()) {
      told.clear();
      tell(snapshot.timeMicros(), recovery);
    }
  }

  private void tell(long timeMicros, String text) {
    out.printf("%s  %s%n", format.elapsed(timeMicros / 1_000_000), text);
    out.flush();
  }
}
