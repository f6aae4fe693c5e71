package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReaderSettings.Pace;

/** Stories of adapters and vehicles that a quick way of asking has to get along with. */
class PaceStoriesTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  /** Whether a line is a request for parameters with the number of answer lines. */
  private static boolean isCounted(String line) {
    return line.startsWith("01") && line.length() % 2 == 1;
  }

  private String lastSent() {
    return adapter.sent.getLast();
  }

  private List<String> counted() {
    return adapter.sent.stream().filter(PaceStoriesTest::isCounted).toList();
  }

  @Test
  void countIsUsedWhereOneControlUnitAnswersAndNowhereElse() {
    drive.go(20);

    assertThat(counted()).isNotEmpty();
    // 0C and 0D are answered by two control units.
    assertThat(counted()).noneMatch(line -> line.contains("0C") || line.contains("0D"));
    assertThat(recording.of("01.0D")).allMatch(reading -> reading.value() == 80.0);
  }

  @Test
  void adapterThatDoesNotKnowTheCountIsToldOnce() {
    adapter.wire = reply -> isCounted(lastSent()) ? "?\r\r>" : reply;

    drive.go(20);

    assertThat(counted()).hasSize(1);
    assertThat(recording.of("01.05").size()).isGreaterThan(14);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // It takes the number for that of the messages, and returns after the first line.
  @Test
  void adapterThatCutsAnswersShortIsAskedWithoutTheCount() {
    adapter.wire =
        reply ->
            isCounted(lastSent()) && reply.startsWith("7E81")
                ? reply.substring(0, reply.indexOf('\r')) + "\r\r>"
                : reply;

    drive.go(60);

    assertThat(counted().stream().filter(line -> !line.endsWith("1"))).hasSizeLessThanOrEqualTo(8);
    assertThat(recording.of("01.67.1").size()).isGreaterThan(45);
    assertThat(recording.of("01.67.1")).allMatch(reading -> reading.value() == 88.0);
    assertThat(recording.of("01.04").size()).isGreaterThan(180);
  }

  @Test
  void atFullPaceTheBelievedControlUnitIsAskedAlone() {
    vehicle.answersAlone = true;

    drive.go(30, Pace.FULL, now -> {});

    assertThat(adapter.sent).contains("ATSH7E0");
    assertThat(drive.lastSent(40)).anyMatch(line -> isCounted(line) && line.contains("0C"));
    assertThat(recording.of("01.0C").size()).isGreaterThan(400);
    assertThat(recording.of("01.0C")).allMatch(reading -> reading.controlUnit().equals("7E8"));
  }

  @Test
  void controlUnitThatKeepsSilentAloneIsAskedWithTheOthers() {
    vehicle.answersAlone = false;

    drive.go(30, Pace.FULL, now -> {});

    assertThat(adapter.sent.stream().filter("ATSH7E0"::equals)).hasSizeLessThanOrEqualTo(2);
    assertThat(recording.of("01.0C").size()).isGreaterThan(200);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 8);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  @Test
  void adapterIsToldHowLongThisVehicleTakes() {
    drive.go(20);

    // Replies take 30 ms: 1.5 * 30 + 20 = 65 ms, 16 units of 4.096 ms.
    assertThat(adapter.sent.stream().filter(line -> line.startsWith("ATST")))
        .containsExactly("ATST10");
  }

  @Test
  void parameterThatStopsAnsweringRestsAndIsTriedAgain() {
    double[] gone = {0, 0};

    drive.go(
        120,
        now -> {
          if (now > 20 && gone[0] == 0) {
            gone[0] = now;
            vehicle.without(0x05);
          }
          if (now > 70 && gone[1] == 0) {
            gone[1] = now;
            vehicle.parameter("7E8", 0x05, "82");
          }
        });

    long triesWhileGone = 0;
    for (int i = 0; i < adapter.sent.size(); i++) {
      double at = adapter.sentAtSeconds.get(i);
      String line = adapter.sent.get(i);
      if (at > gone[0] && at < gone[1] && line.startsWith("01") && line.contains("05")) {
        triesWhileGone++;
      }
    }
    assertThat(triesWhileGone).isBetween(5L, 12L);
    assertThat(drive.lastReadAt("01.05")).as("read again").isGreaterThan(gone[1] + 40);
    assertThat(recording.of("01.04").size()).as("the others go on").isGreaterThan(440);
  }
}
