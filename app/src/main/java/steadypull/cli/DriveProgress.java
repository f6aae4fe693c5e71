package steadypull.cli;

import java.io.PrintWriter;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import steadypull.advice.AdviceEvent;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RecordingState;
import steadypull.drive.StripState;

/**
 * Tells a terminal what a live drive does: link changes and advice as they come, and a line of
 * figures now and then. Pipeline thread only.
 */
final class DriveProgress implements PipelineOutput {
  private static final long NANOS_BETWEEN_LINES = 2_000_000_000L;

  private final PrintWriter out;
  private final QuantityFormat format;
  private final Set<String> toldTroubles = new HashSet<>();
  private String toldLink = "";
  private long lastLineNanos;

  DriveProgress(PrintWriter out, QuantityFormat format) {
    this.out = out;
    this.format = format;
    this.lastLineNanos = System.nanoTime() - NANOS_BETWEEN_LINES;
  }

  @Override
  public void advice(AdviceEvent event) {
    String level = event.level().map(each -> each.word() + " ").orElse("");
    String channel = event.channel().map(each -> " " + each.id()).orElse("");
    out.printf(
        "%s  %s%s%s%s%n",
        time(event.timeMicros()),
        level,
        event.kind().word(),
        channel,
        event.text().isEmpty() ? "" : ": " + event.text());
    out.flush();
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    tellLink(snapshot);
    tellRecording(snapshot);
    long now = System.nanoTime();
    if (snapshot.link().state() == LinkSummary.State.CONNECTED
        && now - lastLineNanos >= NANOS_BETWEEN_LINES) {
      lastLineNanos = now;
      tellFigures(snapshot);
    }
  }

  private void tellLink(DriveSnapshot snapshot) {
    LinkSummary link = snapshot.link();
    String told =
        link.state().name().toLowerCase(Locale.ROOT).replace('_', ' ') + "|" + link.detail();
    if (!told.equals(toldLink)) {
      toldLink = told;
      out.printf(
          "%s  link %s%n",
          time(snapshot.timeMicros()),
          link.detail().isEmpty() ? told.replace("|", "") : told.replace("|", ": "));
      out.flush();
    }
  }

  private void tellRecording(DriveSnapshot snapshot) {
    if (snapshot.recording() instanceof RecordingState.Failed failed
        && toldTroubles.add(failed.reason())) {
      out.printf("%s  not recording: %s%n", time(snapshot.timeMicros()), failed.reason());
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
