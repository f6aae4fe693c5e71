package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Stories of adapters that know less than they should, or say it badly. */
class CheapAdapterTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ATI", "ATE0", "ATL0", "ATS0", "ATCAF1", "ATAT1", "ATM0", "ATTP0", "ATDPN", "ATDP", "ATRV",
        "ATPC", "ATWS"
      })
  void aCommandThatIsRefusedCostsNoReading(String command) {
    adapter.adapterReplies.put(command, "?");

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.0D")).allMatch(r -> r.controlUnit().equals("7E8"));
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // Refuses everything but what it cannot do without, and prints blanks.
  @Test
  void anAdapterThatRefusesAllAtOnceIsReadAllTheSame() {
    for (String command : List.of("ATE0", "ATL0", "ATS0", "ATAT1", "ATM0", "ATTP0", "ATDPN")) {
      adapter.adapterReplies.put(command, "?");
    }
    adapter.wire = reply -> reply.replaceAll("([0-9A-F]{2})(?=[0-9A-F]{2})", "$1 ");

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.77.1")).isNotEmpty().allMatch(r -> r.value() == 82.0);
  }

  // Refused, or agreed to and not done: some copies say OK to everything.
  @ParameterizedTest
  @ValueSource(strings = {"?", "OK"})
  void anAdapterThatShowsNoSendersIsReadThroughTheEngineAlone(String replyToHeadersOn) {
    adapter.adapterReplies.put("ATH1", replyToHeadersOn);
    vehicle.hidesSenders = true;
    vehicle.fixed.put(
        "7E0 0902",
        String.join(
            "", ScriptedVehicle.bareLines("490201" + "315A5A5450394147315230303030303432")));

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.0D")).as("the gearbox says 81").allMatch(r -> r.value() == 80.0);
    assertThat(recording.of("01.77.2")).isNotEmpty().allMatch(r -> r.value() == 52.0);
    assertThat(recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
    assertThat(adapter.sent.subList(adapter.sent.indexOf("ATSH7E0"), adapter.sent.size()))
        .as("the vehicle's own signals are asked at their unit, the rest at the engine's")
        .doesNotContain("ATSH7DF");
  }

  @Test
  void oneControlUnitWithoutItsAddressIsTakenForTheEngine() {
    adapter.adapterReplies.put("ATH1", "?");
    adapter.adapterReplies.put("ATSH7E0", "?");
    vehicle.hidesSenders = true;
    vehicle.units.remove("7E9");

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.0C")).allMatch(r -> r.controlUnit().equals("7E8"));
  }

  // Nobody could say whose value is whose: better none than the gearbox's for the engine's.
  @Test
  void severalControlUnitsWithoutAddressesAreToldAndNotRead() {
    adapter.adapterReplies.put("ATH1", "?");
    adapter.adapterReplies.put("ATSH7E0", "?");
    vehicle.hidesSenders = true;

    drive.go(30);

    assertThat(recording.readings).isEmpty();
    assertThat(reasons())
        .isNotEmpty()
        .allSatisfy(
            reason ->
                assertThat(reason)
                    .contains("scripted:port", "several control units", "use another one"));
  }

  // One "?" may be a damaged command; senders are too good to give up for it.
  @Test
  void aRefusalToShowSendersIsBelievedTheSecondTimeOnly() {
    List<String> damaged = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (adapter.sent.getLast().equals("ATH1") && damaged.isEmpty()) {
            damaged.add(reply);
            return "?\r\r>";
          }
          return reply;
        };

    drive.go(10);

    assertThat(adapter.sent.stream().filter("ATH1"::equals)).hasSize(2);
    assertThat(adapter.sent).doesNotContain("ATSH7E0");
  }

  @Test
  void anEchoThatComesBackOnTheWayCostsNoReading() {
    adapter.wire =
        reply -> adapter.clock.seconds() > 10 ? adapter.sent.getLast() + "\r" + reply : reply;

    drive.go(20);

    assertThat(recording.of("01.0C")).hasSizeGreaterThan(60).allMatch(r -> r.value() == 2000.0);
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(19.5);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // NULs, and one in four hundred bytes with its top bit flipped.
  @Test
  void noiseOnTheLineGivesNoWrongValue() {
    long seed = 4711;
    Random random = new Random(seed);
    adapter.wire = reply -> noisy(reply, random);

    drive.go(60);

    assertThat(recording.of("01.0C")).as("seed %d", seed).hasSizeGreaterThan(50);
    assertThat(recording.of("01.0C")).as("seed %d", seed).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.05")).as("seed %d", seed).allMatch(r -> r.value() == 90.0);
    assertThat(adapter.openings).as("seed %d", seed).isEqualTo(1);
  }

  private static String noisy(String reply, Random random) {
    StringBuilder noisy = new StringBuilder();
    for (int i = 0; i < reply.length(); i++) {
      char character = reply.charAt(i);
      int chance = random.nextInt(400);
      noisy.append(chance < 20 ? "\0" : "");
      noisy.append(chance == 20 && character != '>' ? (char) (character | 0x80) : character);
    }
    return noisy.toString();
  }

  @Test
  void aSearchThatIsToldInPiecesIsWaitedFor() {
    adapter.mostBytesPerRead = 1;
    adapter.wire =
        reply ->
            adapter.sent.getLast().equals("0100") && adapter.clock.seconds() < 8
                ? "SEAR|CHING.|..\r|" + reply
                : reply;

    drive.go(40);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(adapter.sent).as("nothing interrupts the search").doesNotContain("");
  }

  // Row BUFFER FULL: what is asked at once has to become less, and nothing else happens.
  @Test
  void anAdapterWhoseBufferOverflowsIsAskedForLess() {
    adapter.wire =
        reply -> {
          String request = adapter.sent.getLast();
          boolean isLong = request.startsWith("01") && request.length() > 8;
          return isLong ? "7E8100E41047F\rBUFFER FULL\r\r>" : reply;
        };

    drive.go(60);

    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(drive.lastSent(30)).allMatch(line -> !line.startsWith("01") || line.length() <= 8);
    assertThat(recording.of("01.0C").size()).isGreaterThan(100);
  }

  // Rows ACT ALERT and LP ALERT, said while nothing is asked: any command keeps it awake.
  @ParameterizedTest
  @ValueSource(
      strings = {"ACT ALERT\r>", "!LP ALERT\r>", "7E803410D50\r>", "\0\0\r>", "NO DATA\r>"})
  void whatIsSaidUnaskedAndMeansNothingIsPassedOver(String text) {
    drive.go(20, now -> adapter.unasked = now > 10 && now < 12 ? text : "");

    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
    assertThat(adapter.sent.stream().filter("ATE0"::equals)).hasSize(1);
  }

  // Row "identity text out of the blue": everything set is forgotten, and is set again at once.
  @ParameterizedTest
  @ValueSource(strings = {"SCRIPTED ADAPTER 1\r\r>", "LV RESET\r\r>", "ERR94\r\r>"})
  void anAdapterThatTellsUnaskedThatItRestartedIsSetUpAgain(String text) {
    List<Double> restarted = new ArrayList<>();
    drive.go(
        20,
        now -> {
          if (now > 10 && restarted.isEmpty()) {
            restarted.add(now);
            adapter.unasked = text;
          }
        });

    assertThat(drive.sentBetween(10, 11)).contains("ATWS", "ATE0", "ATH1");
    assertThat(adapter.openings).isEqualTo(1);
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(19.5);
  }

  private List<String> reasons() {
    return recording.states.stream()
        .map(Recording.Told::state)
        .filter(LinkState.Lost.class::isInstance)
        .map(state -> ((LinkState.Lost) state).reason())
        .toList();
  }
}
