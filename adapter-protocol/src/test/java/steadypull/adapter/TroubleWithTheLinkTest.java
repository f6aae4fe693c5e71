package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Stories of adapters, vehicles and ports that fail, in scripted time. */
class TroubleWithTheLinkTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void engineOffIsToldAndTheVehicleFoundAgain() {
    drive.go(60, now -> vehicle.isAwake = now < 15 || now > 35);

    assertThat(recording.story())
        .containsExactly(
            "Opening",
            "Searching",
            "Connected",
            "Searching",
            "VehicleSilent",
            "Connected",
            "Closed");
    assertThat(adapter.openings).isEqualTo(1);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(50);
  }

  @Test
  void silentVehicleIsAskedSeldom() {
    vehicle.isAwake = false;

    drive.go(60);

    assertThat(recording.story())
        .containsExactly("Opening", "Searching", "VehicleSilent", "Closed");
    assertThat(adapter.sent.stream().filter("0100"::equals).count()).isBetween(8L, 13L);
  }

  @Test
  void signOfLifeComesEverySecondWhateverHappens() {
    drive.go(
        90,
        now -> {
          vehicle.isAwake = now < 20 || now > 35;
          adapter.isMute = now > 50 && now < 60;
          adapter.isGone = now > 70 && now < 80;
        });

    for (int i = 1; i < recording.states.size(); i++) {
      double gap = recording.states.get(i).seconds() - recording.states.get(i - 1).seconds();
      assertThat(gap).as("gap before " + recording.states.get(i)).isLessThanOrEqualTo(1.0);
    }
    assertThat(recording.story()).contains("VehicleSilent", "Lost");
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(85);
  }

  @Test
  void vanishedPortIsOpenedAgainWithGrowingPatience() {
    drive.go(60, now -> adapter.isGone = now > 10);

    List<Integer> waits = new ArrayList<>();
    String last = "";
    for (Recording.Told told : recording.states) {
      String name = told.state().getClass().getSimpleName();
      if (told.state() instanceof LinkState.Lost(String reason, int retrySeconds)
          && !last.equals("Lost")) {
        waits.add(retrySeconds);
        assertThat(reason).contains("scripted:port", "gone", "Check the plug");
      }
      last = name;
    }
    assertThat(waits).startsWith(1, 2, 5, 10, 10);
  }

  @Test
  void adapterThatRestartedIsSetUpAgain() {
    List<Double> restartedAt = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (adapter.clock.seconds() > 12 && restartedAt.isEmpty()) {
            restartedAt.add(adapter.clock.seconds());
            return "\r\rLV RESET\r\r>";
          }
          return reply;
        };

    drive.go(30);

    assertThat(adapter.sent.stream().filter("ATE0"::equals)).hasSize(2);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(28);
    assertThat(adapter.openings).isEqualTo(1);
  }

  @Test
  void nonsenseFromTheAdapterIsToldAndRecoveredFrom() {
    adapter.wire =
        reply -> {
          double now = adapter.clock.seconds();
          return now > 12 && now < 30 ? "\u00FE\u0001WHAT IS THIS\r>" : reply;
        };

    drive.go(60);

    assertThat(recording.story()).contains("Lost");
    assertThat(recording.readings).allMatch(r -> Double.isFinite(r.value()));
    assertThat(recording.of("01.0C")).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(55);
  }

  @Test
  void somethingElseOnThePortIsNamed() {
    adapter.wire = reply -> "$SOMETHING,ELSE*00\r\n";

    drive.go(10);

    assertThat(recording.states)
        .anyMatch(
            told ->
                told.state() instanceof LinkState.Lost lost
                    && lost.reason().contains("SOMETHING,ELSE")
                    && lost.reason().contains("expected the answers of an AT-command adapter"));
  }

  @Test
  void deadPortIsToldInOneMessage() {
    adapter.isMute = true;

    drive.go(10);

    assertThat(recording.story()).startsWith("Opening", "Lost", "Opening");
    assertThat(recording.story()).doesNotContain("Searching");
  }

  @Test
  void presentProtocolIsTriedFirstAfterALoss() {
    drive.go(40, now -> adapter.isGone = now > 10 && now < 12);

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("ATTP")))
        .containsExactly("ATTP0", "ATTPA6");
  }

  // Without the length byte 01 04 would be service 04, which clears: first it must be sure.
  @Test
  void nothingIsAskedOfTheVehicleBeforeTheAdapterAddsLengthBytes() {
    adapter.adapterReplies.put("ATCAF1", "HUH");

    drive.go(30);

    assertThat(adapter.sent).contains("ATCAF1").allMatch(line -> line.startsWith("AT"));
  }

  @Test
  void adapterThatKnowsNoLengthBytesOrEchoSettingsAddsThemAnyway() {
    adapter.adapterReplies.put("ATCAF1", "?");
    adapter.adapterReplies.put("ATE0", "?");

    drive.go(20);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  // A search under the header of one control unit would find that one only.
  @Test
  void searchAfterTroubleIsAddressedToEverybody() {
    drive.wanted = Set.of("01.46");
    vehicle.fixed.put("7E1 221E1C", "7E905621E1C0820AAAA\r");
    adapter.wire = reply -> isAnswer() && isBetween(12, 40) ? "CAN ERROR\r\r>" : reply;

    drive.go(80);

    String header = "7DF";
    int searches = 0;
    for (String line : adapter.sent) {
      header = line.matches("ATZ|ATWS") ? "7DF" : header;
      header = line.startsWith("ATSH") ? line.substring(4) : header;
      if (line.equals("0100")) {
        assertThat(header).isEqualTo("7DF");
        searches++;
      }
    }
    assertThat(searches).isGreaterThan(4);
    assertThat(drive.lastReadAt("01.46")).isGreaterThan(65);
  }

  @Test
  void vehicleWithoutCoolantTemperatureIsReadAsFarAsItGoes() {
    vehicle.without(0x05).without(0x67);

    drive.go(20);

    assertThat(recording.connected().signals())
        .contains("01.0C", "01.77.1")
        .doesNotContain("01.05", "01.67.1");
    assertThat(recording.of("01.77.1")).isNotEmpty();
  }

  private boolean isAnswer() {
    return !adapter.sent.getLast().startsWith("AT");
  }

  private boolean isBetween(double from, double until) {
    return adapter.clock.seconds() > from && adapter.clock.seconds() < until;
  }
}
