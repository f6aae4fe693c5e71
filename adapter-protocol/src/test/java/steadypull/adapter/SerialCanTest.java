package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A vehicle behind a serial CAN adapter, read by the same reader. */
class SerialCanTest {
  private static final String RPM = "t7DF802010C0000000000";

  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedSerialCan adapter = new ScriptedSerialCan(drive.vehicle);

  private void go(double seconds, Runnable atEachEvent) {
    VehicleReader reader =
        new VehicleReader(adapter, drive.settings(ReaderSettings.Pace.POLITE), drive.recording);
    double end = adapter.clock.seconds() + seconds;
    drive.recording.at =
        now -> {
          atEachEvent.run();
          if (now >= end) {
            reader.close();
          }
        };
    reader.run();
  }

  @Test
  void readsAVehicleLikeThroughTheOtherKindOfAdapter() {
    go(20, () -> {});

    LinkState.Connected connected = drive.recording.connected();
    assertThat(connected.adapter()).isEqualTo("serial CAN, version 1013");
    assertThat(connected.protocol()).isEqualTo("ISO 15765-4 (CAN 11/500)");
    assertThat(drive.recording.of("01.0C")).allMatch(reading -> reading.value() == 2000);
    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(60);
  }

  // The same vehicle, the same settings, the same span over both dialogues.
  @Test
  void bothDialoguesGiveTheSameReadings() {
    drive.vehicle.fixed.put("7E1 221E1C", "7E905621E1C0640AAAA\r");
    go(30, () -> {});
    ScriptedDrive other = new ScriptedDrive();
    other.vehicle.fixed.put("7E1 221E1C", "7E905621E1C0640AAAA\r");
    other.go(30);

    Map<String, Long> here = counts(drive.recording);
    Map<String, Long> there = counts(other.recording);
    assertThat(here.keySet()).isEqualTo(there.keySet()).contains("7E9 22.1E1C.0 60.0");
    there.forEach(
        (reading, count) ->
            assertThat((double) here.getOrDefault(reading, 0L))
                .as(reading)
                .isCloseTo(count, within(count * 0.1 + 3)));
  }

  /** How often each control unit told each signal's value. */
  private static Map<String, Long> counts(Recording recording) {
    Map<String, Long> counts = new TreeMap<>();
    recording.readings.forEach(
        reading ->
            counts.merge(
                "%s %s %s"
                    .formatted(reading.controlUnit(), reading.signal().key(), reading.value()),
                1L,
                Long::sum));
    return counts;
  }

  @Test
  void channelIsClosedAtTheEnd() {
    go(5, () -> {});

    assertThat(adapter.isOpen).isFalse();
    assertThat(adapter.sent).endsWith("C");
  }

  @Test
  void politePaceKeepsToTwentyQuestionsASecond() {
    go(30, () -> {});

    long questions =
        adapter.sent.stream()
            .filter(line -> line.matches("[tT].*"))
            .filter(line -> !line.contains("830"))
            .count();
    assertThat(questions).isBetween(100L, 600L);
  }

  @Test
  void adapterThatDoesNotAcknowledgeFramesIsReadToo() {
    adapter.acknowledgesFrames = false;
    go(10, () -> {});

    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(25);
  }

  // A reset by low supply closes the channel: frames are refused from then on.
  @Test
  void restartedAdapterIsOpenedAgain() {
    List<Double> restarts = new ArrayList<>();
    go(
        30,
        () -> {
          if (adapter.clock.seconds() > 10 && restarts.isEmpty()) {
            restarts.add(adapter.clock.seconds());
            adapter.restart();
          }
        });

    double after = restarts.getFirst();
    assertThat(drive.recording.of("01.0C"))
        .anyMatch(r -> r.nanoTime() / 1e9 > after && r.nanoTime() / 1e9 < after + 5);
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(29.5);
  }

  @Test
  void adapterThatFallsSilentIsLostAndFoundAgain() {
    go(60, () -> adapter.isMute = adapter.clock.seconds() > 10 && adapter.clock.seconds() < 25);

    assertThat(drive.recording.story()).contains("Lost");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(58);
  }

  @Test
  void adapterWithoutStatusOrTimeStampsIsReadToo() {
    adapter.refusing("F", "Z0", "N");
    go(10, () -> {});

    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(25);
  }

  @Test
  void damagedLinesNeverGiveAWrongValueOrEndTheReading() {
    long seed = 8;
    Random random = new Random(seed);
    adapter.wire =
        line -> {
          if (random.nextInt(20) != 0) {
            return line;
          }
          int at = random.nextInt(line.length());
          // Lost, repeated or no digit: what a length or kind could tell.
          return switch (random.nextInt(3)) {
            case 0 -> line.substring(0, at) + line.substring(at + 1);
            case 1 -> line.substring(0, at) + line.charAt(at) + line.substring(at);
            default -> line.substring(0, at) + "\u0000" + line.substring(at + 1);
          };
        };
    go(120, () -> {});

    assertThat(new TreeSet<>(drive.recording.of("01.0C").stream().map(Reading::value).toList()))
        .as("seed %d", seed)
        .containsExactly(2000.0);
    assertThat(drive.lastReadAt("01.0C")).as("seed %d", seed).isGreaterThan(115);
  }

  @Test
  void probeTellsThisKindOfAdapterToo() {
    assertThat(AdapterProbe.probe(adapter))
        .isEqualTo(
            new ProbeResult.Adapter(
                "serial CAN, version 1013",
                /* showsSenders= */ true,
                OptionalDouble.empty(),
                new ProbeResult.Vehicle(
                    "ISO 15765-4 (CAN 11/500)", List.of("7E8", "7E9"), 11, "")));
  }

  // Before the adapter is known nothing but questions for identity and version goes out.
  @Test
  void portThatIsNoAdapterSeesOnlyIdentityQuestions() {
    adapter.isMute = true;

    assertThat(AdapterProbe.probe(adapter)).isEqualTo(new ProbeResult.NothingAnswered());
    assertThat(new TreeSet<>(adapter.sent)).containsExactly("ATI", "V");
  }

  @Test
  void everyRequestIsOneFrameOfEightBytes() {
    go(10, () -> {});

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("t")).toList())
        .isNotEmpty()
        .allMatch(line -> line.length() == RPM.length());
    assertThat(adapter.sent).contains("t7DF8020100" + "0".repeat(10));
  }
}
