package steadypull.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import steadypull.advice.AdviceEvent;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RawCapture;
import steadypull.drive.ReceiverNews;
import steadypull.drive.StripState;
import steadypull.drive.TabletReport;

/**
 * Tells a terminal what a live drive does: link changes, advice and trouble codes as they come, and
 * a line of figures now and then. Pipeline thread only.
 */
final class DriveProgress implements PipelineOutput {
  private static final long NANOS_BETWEEN_LINES = 2_000_000_000L;

  private final PrintWriter out;
  private final QuantityFormat format;
  private final DriveTroubles troubles;
  private final CodeNews codes = new CodeNews();
  private String toldLink = "";
  private long lastLineNanos;
  private boolean isAssumptionTold;

  DriveProgress(PrintWriter out, QuantityFormat format) {
    this.out = out;
    this.format = format;
    this.troubles = new DriveTroubles(out, format);
    this.lastLineNanos = System.nanoTime() - NANOS_BETWEEN_LINES;
  }

  @Override
  public void advice(AdviceEvent event) {
    if (event.kind().isForTheRecord()) {
      return;
    }
    String level = event.level().map(each -> each.word() + " ").orElse("");
    String channel = event.channel().map(each -> " " + each.id()).orElse("");
    out.printf(
        "%s  %s%s%s%s%n",
        time(event.timeMicros()),
        level,
        event.kind().word().replace('-', ' '),
        channel,
        event.text().isEmpty() ? "" : ": " + event.text());
    out.flush();
  }

  @Override
  public void receiver(ReceiverNews news) {
    if (news.state() != ReceiverNews.State.CLOSED) {
      out.printf("%s  %s%n", time(news.timeMicros()), ReceiverWords.of(news));
      out.flush();
    }
  }

  @Override
  public void tablet(TabletReport report) {
    out.printf("%s  %s%n", time(report.timeMicros()), report.sentence());
    out.flush();
  }

  @Override
  public void captured(RawCapture.Kept kept) {
    troubles.captured(kept);
    out.printf("raw capture: %s%n", kept.file());
    out.flush();
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    tellLink(snapshot);
    troubles.tellRecording(snapshot);
    tellAssumedPlaces(snapshot);
    tellCodes(snapshot);
    long now = System.nanoTime();
    if (snapshot.link().state() == LinkSummary.State.CONNECTED
        && now - lastLineNanos >= NANOS_BETWEEN_LINES) {
      lastLineNanos = now;
      tellFigures(snapshot);
    }
  }

  private void tellLink(DriveSnapshot snapshot) {
    String told = LinkWords.of(snapshot.link());
    if (!told.equals(toldLink)) {
      toldLink = told;
      out.printf("%s  %s%n", time(snapshot.timeMicros()), told);
      out.flush();
    }
  }

  /** Once a drive, as soon as something is heard of such a sensor. */
  private void tellAssumedPlaces(DriveSnapshot snapshot) {
    List<Channel> assumed = snapshot.assumedPlaces();
    if (!isAssumptionTold && !assumed.isEmpty()) {
      isAssumptionTold = true;
      out.printf(
          "%s  where these sensors sit is assumed: %s; \"steadypull vehicle NAME --propose-roles\""
              + " tells more after a drive with boost%n",
          time(snapshot.timeMicros()),
          assumed.stream().map(Channel::id).collect(Collectors.joining(", ")));
      out.flush();
    }
  }

  private void tellCodes(DriveSnapshot snapshot) {
    for (String line : codes.since(snapshot.diagnosis())) {
      out.printf("%s  %s%n", time(snapshot.timeMicros()), line);
      out.flush();
    }
  }

  private void tellFigures(DriveSnapshot snapshot) {
    LinkSummary link = snapshot.link();
    out.printf(
        Locale.ROOT,
        "%s  %4.1f readings/s, %d of %d channels fresh%s%n",
        time(snapshot.timeMicros()),
        link.samplesPerSecond(),
        link.freshChannels(),
        link.expectedChannels(),
        temperatures(snapshot.strips()));
    out.flush();
  }

  private String temperatures(List<StripState> strips) {
    return strips.stream()
        .filter(strip -> strip.latestCelsius().isPresent())
        .map(
            strip ->
                ", %s %s"
                    .formatted(
                        strip.channel().id(),
                        format.temperature(strip.latestCelsius().getAsDouble())))
        .collect(Collectors.joining());
  }

  private String time(long micros) {
    return format.elapsed(micros / 1_000_000);
  }
}
