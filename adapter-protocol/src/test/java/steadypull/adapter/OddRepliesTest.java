package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an adapter says instead of data, from one odd reply to minutes of them. In scripted time.
 */
class OddRepliesTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  // Rows of table 4b of the sheet on the text dialogue (most of them from an adapter's data sheet).
  @ParameterizedTest
  @ValueSource(
      strings = {
        "SEARCHING...",
        "BUS INIT: ...ERROR",
        "ERROR",
        "UNABLE TO CONNECT",
        "NO DATA",
        "CAN ERROR",
        "BUS ERROR",
        "BUS BUSY",
        "FB ERROR",
        "BUFFER FULL",
        "DATA ERROR",
        "7E80441<DATA ERROR",
        "7E8044105FF<RX ERROR",
        "STOPPED",
        "?",
        "ACT ALERT",
        "!LP ALERT",
        "LV RESET",
        "ERR94",
        "SCRIPTED ADAPTER 1",
        ""
      })
  void textInsteadOfDataGivesNoWrongValueAndPasses(String text) {
    adapter.wire = reply -> isAnswer() && isBetween(12, 30) ? text + "\r\r>" : reply;

    drive.go(60);

    assertThat(recording.of("01.0C")).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.05")).allMatch(r -> r.value() == 90.0);
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(55);
    assertThat(recording.story()).endsWith("Connected", "Closed");
    assertThat(adapter.openings).isLessThan(12);
  }

  // Rows CAN ERROR to BUS BUSY of the same table: the driver is told what stands in between.
  @ParameterizedTest
  @CsvSource({
    "NO DATA, NO_ANSWER",
    "UNABLE TO CONNECT, NO_ANSWER",
    "BUS INIT: ...ERROR, NO_ANSWER",
    "ERROR, NO_ANSWER",
    "CAN ERROR, BUS_FAULT",
    "BUS ERROR, BUS_FAULT",
    "BUS BUSY, BUS_BUSY",
    "FB ERROR, ADAPTER_FAULT"
  })
  void whatStandsBetweenAdapterAndVehicleIsTold(String text, SilenceCause cause) {
    adapter.wire = reply -> isAnswer() && isBetween(12, 60) ? text + "\r\r>" : reply;

    drive.go(60);

    assertThat(
            recording.states.stream()
                .map(Recording.Told::state)
                .filter(LinkState.VehicleSilent.class::isInstance)
                .distinct())
        .containsExactly(new LinkState.VehicleSilent("SCRIPTED ADAPTER 1", cause));
  }

  // Row FB ERROR: a full reset once, and then it is for people to do something.
  @Test
  void anAdapterThatDoesNotReadBackIsResetOnceAndThenTold() {
    adapter.wire = reply -> isAnswer() && isBetween(0, 60) ? "FB ERROR\r\r>" : reply;

    drive.go(62);

    assertThat(adapter.sent.stream().filter("ATZ"::equals)).as("start, and once more").hasSize(2);
    assertThat(recording.story())
        .containsExactly("Opening", "Searching", "VehicleSilent", "Closed");
    assertThat(recording.states.getFirst().seconds()).isLessThan(3);
  }

  // One lost answer to a support map once hid 17 of 24 channels for the whole drive.
  @ParameterizedTest
  @ValueSource(strings = {"NO DATA", "DATA ERROR", "BUFFER FULL", "7E8064120A\r"})
  void supportMapThatWasLostIsAskedForAgain(String text) {
    vehicle.fixed.put(
        "7DF 0902",
        String.join(
            "", ScriptedVehicle.frames("7E8", "490201" + "315A5A5450394147315230303030303432")));
    List<String> lost = new ArrayList<>();
    adapter.wire =
        reply -> {
          String request = adapter.sent.getLast();
          boolean isMap = request.matches("0120|0140|0160|0902");
          if (isMap && !lost.contains(request)) {
            lost.add(request);
            return text + "\r\r>";
          }
          return reply;
        };

    drive.go(20);

    assertThat(lost).containsExactly("0120", "0140", "0160", "0902");
    assertThat(recording.connected().signals()).contains("01.33", "01.46", "01.67.1", "01.77.2");
    assertThat(recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
  }

  // The gearbox tells its map, the engine's answer is lost: only half of it has come.
  @Test
  void supportMapOfOneControlUnitIsMissedWhenAnotherAnswers() {
    vehicle.parameter("7E9", 0x46, "4B");
    List<String> cut = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (adapter.sent.getLast().equals("0140") && cut.isEmpty()) {
            cut.add(reply);
            return reply.substring(reply.indexOf("7E9"));
          }
          return reply;
        };

    drive.go(20);

    assertThat(cut).hasSize(1);
    assertThat(recording.of("01.46")).isNotEmpty().allMatch(r -> r.controlUnit().equals("7E8"));
  }

  // The same once: a single odd reply costs one request and nothing else.
  @ParameterizedTest
  @ValueSource(
      strings = {"NO DATA", "BUFFER FULL", "DATA ERROR", "BUS BUSY", "CAN ERROR", "STOPPED", "?"})
  void oneOddReplyIsNoTrouble(String text) {
    List<String> replaced = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (isAnswer() && isBetween(12, 60) && replaced.isEmpty()) {
            replaced.add(reply);
            return text + "\r\r>";
          }
          return reply;
        };

    drive.go(30);

    assertThat(replaced).hasSize(1);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  @Test
  void progressGluedToTheFirstLineAndWarningsBeforeDataAreStripped() {
    adapter.wire = reply -> reply.startsWith("7E8") ? "ACT ALERT\rSEARCHING..." + reply : reply;

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  private boolean isAnswer() {
    return !adapter.sent.getLast().startsWith("AT");
  }

  private boolean isBetween(double from, double until) {
    return adapter.clock.seconds() > from && adapter.clock.seconds() < until;
  }
}
