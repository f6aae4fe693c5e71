package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How parameters come to share requests, and what puts an end to that. In scripted time. */
class SharedRequestsTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void parametersShareRequestsOnceTheirLengthsAreLearnt() {
    drive.go(10);

    assertThat(adapter.sent).anyMatch(line -> line.startsWith("01") && line.length() == 14);
    assertThat(adapter.sent.indexOf("010C")).isLessThan(firstIndexOfPack()).isNotNegative();
  }

  private int firstIndexOfPack() {
    for (int i = 0; i < adapter.sent.size(); i++) {
      if (adapter.sent.get(i).startsWith("01") && adapter.sent.get(i).length() > 4) {
        return i;
      }
    }
    return -1;
  }

  @Test
  void controlUnitThatKeepsSilentToSeveralIsAskedSingly() {
    vehicle.answersSeveral = false;

    drive.go(20);

    assertThat(recording.of("01.0C").size()).isGreaterThan(40);
    assertThat(drive.lastSent(50)).allMatch(line -> !line.startsWith("01") || line.length() <= 5);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // One lost answer while learning must not cost the whole drive its packed requests.
  @Test
  void parameterWhoseAnswerWasLostIsLearntLater() {
    List<String> lost = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E803410D") && lost.isEmpty()) {
            lost.add(reply);
            return "NO DATA\r\r>";
          }
          return reply;
        };

    drive.go(20);

    assertThat(lost).hasSize(1);
    assertThat(recording.of("01.0D")).hasSizeGreaterThan(40);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  // ISO 14229-1 codes 21 and 78: it is the moment that does not suit, not the way of asking.
  @ParameterizedTest
  @ValueSource(strings = {"7E8037F0121AAAAAAAA\r", "7E8037F0178AAAAAAAA\r"})
  void controlUnitThatIsBusyOnceIsAskedForSeveralAgain(String refusal) {
    List<String> refused = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E81") && adapter.clock.seconds() > 8 && refused.isEmpty()) {
            refused.add(reply);
            return refusal + "\r>";
          }
          return reply;
        };

    drive.go(20);

    assertThat(refused).hasSize(1);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  @Test
  void answerThatWasDamagedOnceDoesNotEndAskingForSeveral() {
    List<String> damaged = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E81") && reply.contains("0D50") && damaged.isEmpty()) {
            damaged.add(reply);
            return reply.replace("0D50", "0E50");
          }
          return reply;
        };

    drive.go(20);

    assertThat(damaged).hasSize(1);
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  // Parameter 0D changes its length in packs only: everything after it would shift.
  @Test
  void answerWithAStrangerInItIsDiscardedAndParametersAreAskedSingly() {
    adapter.wire =
        reply ->
            reply.startsWith("7E81") && reply.contains("0D50")
                ? reply.replace("0D50", "0E50")
                : reply;

    drive.go(20);

    assertThat(recording.of("01.0D")).isNotEmpty().allMatch(r -> r.value() == 80.0);
    assertThat(drive.lastSent(30)).allMatch(line -> !line.startsWith("01") || line.length() <= 5);
  }
}
