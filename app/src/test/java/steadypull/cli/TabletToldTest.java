package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.PipelineOutput;
import steadypull.drive.TabletReport;
import steadypull.tablet.TabletNews;

/** What a terminal says of the tablet that records. */
class TabletToldTest {
  private static final QuantityFormat FORMAT =
      new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC);
  private static final Instant CLOCK = Instant.parse("2026-07-15T17:46:02Z");

  private final StringWriter told = new StringWriter();

  private List<String> tell(PipelineOutput terminal) {
    List.of(
            new TabletNews.MayFallAsleep("no bus"),
            new TabletNews.BatteryNearlyEmpty(5),
            new TabletNews.ClockSet(CLOCK, CLOCK.plusSeconds(3600), false),
            new TabletNews.Charging(6))
        .forEach(news -> terminal.tablet(new TabletReport(61_000_000, news)));
    return told.toString().lines().toList();
  }

  @Test
  void everyNewsIsALineWithItsTime() {
    assertThat(tell(new DriveProgress(new PrintWriter(told), FORMAT)))
        .containsExactly(
            "0:01:01  This computer may fall asleep while recording: keep it awake in its"
                + " settings.",
            "0:01:01  The tablet's battery is nearly empty (5 %). The trip is kept; recording goes"
                + " on in a new trip. Connect the charger.",
            "0:01:01  The tablet's clock went forward by 1:00:00, from 2026-07-15T17:46:02Z to"
                + " 2026-07-15T18:46:02Z. The trip's times are not touched.",
            "0:01:01  The tablet is on its charger (6 %).");
  }

  @Test
  void aQuietTerminalLeavesOutWhatIsWell() {
    assertThat(tell(new DriveTroubles(new PrintWriter(told), FORMAT)))
        .hasSize(3)
        .noneMatch(line -> line.contains("on its charger"));
  }
}
