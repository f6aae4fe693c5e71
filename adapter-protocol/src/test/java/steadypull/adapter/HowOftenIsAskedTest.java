package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReaderSettings.Pace;

/** How often a whole drive asks, gently and at full pace. In scripted time. */
class HowOftenIsAskedTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void politePaceKeepsToTwentyRequestsASecondAndToTheClasses() {
    drive.go(60);

    long requests = adapter.sent.stream().filter(line -> line.matches("[0-9A-F]+")).count();
    assertThat(requests / 60.0).isLessThanOrEqualTo(20);
    // 0.25 s, 1 s and 10 s classes over about 59 s, less the start.
    assertThat(recording.of("01.0C").size()).isBetween(200, 245);
    assertThat(recording.of("01.67.1").size()).isBetween(50, 80);
    assertThat(recording.of("01.46").size()).isBetween(5, 9);
  }

  @Test
  void whatIsSeldomWantedIsAskedForEveryTenSecondsUnlessItRidesAlong() {
    drive.seldom = Set.of("01.0F", "01.67.2");
    drive.go(60);

    assertThat(recording.of("01.0F").size()).isBetween(5, 9);
    assertThat(recording.of("01.67.2").size()).isBetween(50, 80);
  }

  // Also while lengths are learnt, one request for each parameter.
  @Test
  void politePaceIsKeptFromTheFirstRequestOn() {
    drive.go(20);

    List<Double> requests = new ArrayList<>();
    for (int i = 0; i < adapter.sent.size(); i++) {
      if (!adapter.sent.get(i).startsWith("AT")) {
        requests.add(adapter.sentAtSeconds.get(i));
      }
    }
    for (int i = 20; i < requests.size(); i++) {
      assertThat(requests.get(i) - requests.get(i - 20)).isGreaterThan(0.9999);
    }
  }

  @Test
  void fullPaceUsesTheWholeLink() {
    drive.go(60, Pace.FULL, now -> {});

    // A reply takes 30 ms, so 33 requests a second is the most; fast parameters get most of them.
    assertThat(recording.of("01.0C").size()).isGreaterThan(900);
    assertThat(recording.of("01.46").size()).isGreaterThanOrEqualTo(5);
  }
}
