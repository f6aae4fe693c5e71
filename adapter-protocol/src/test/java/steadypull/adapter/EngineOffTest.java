package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Stories of engines that are switched off and started again, in scripted time. */
class EngineOffTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  // Every message on the bus keeps control units awake that drain the battery.
  @Test
  void whileTheEngineIsOffOnlyTheSupplyIsAskedForAndTheBusLeftAlone() {
    drive.go(600, now -> engineRuns(now < 30));

    assertThat(recording.story())
        .containsExactly("Opening", "Searching", "Connected", "Resting", "Closed");
    assertThat(sentBetween(100, 600)).hasSizeBetween(23, 26).containsOnly("ATRV");
    assertThat(lastResting().supplyVolts()).isEqualTo(OptionalDouble.of(12.4));
  }

  @Test
  void theEngineIsOffAfterAMinuteAndNotAtALightsStop() {
    drive.go(90, now -> engineRuns(now < 30 || now > 75));

    assertThat(recording.story()).doesNotContain("Resting");
    assertThat(sentBetween(75, 90)).anyMatch(line -> line.startsWith("01"));
  }

  @Test
  void pollingStartsWhenTheSupplyTellsThatTheEngineRuns() {
    drive.go(400, now -> engineRuns(now < 30 || now > 300));

    assertThat(recording.story())
        .containsExactly("Opening", "Searching", "Connected", "Resting", "Connected", "Closed");
    assertThat(firstReadAfter("01.0C", 300)).isBetween(300.0, 325.0);
    assertThat(adapter.openings).isEqualTo(1);
  }

  @Test
  void aVehicleThatFallsSilentIsLeftAloneAfterAMinute() {
    drive.go(
        400,
        now -> {
          engineRuns(now < 30);
          vehicle.isAwake = now < 30;
        });

    assertThat(recording.story())
        .containsExactly(
            "Opening", "Searching", "Connected", "Searching", "VehicleSilent", "Resting", "Closed");
    assertThat(sentBetween(110, 400)).containsOnly("ATRV");
  }

  // The vehicle is silent, but the alternator works: a loose bus contact, not a parked vehicle.
  @Test
  void aSilentVehicleWhoseEngineRunsIsAskedOn() {
    drive.go(200, now -> vehicle.isAwake = now < 30);

    assertThat(recording.story()).doesNotContain("Resting");
    assertThat(sentBetween(150, 200).stream().filter("0100"::equals)).hasSizeBetween(3, 6);
  }

  // A hybrid's engine stands while its battery is charged.
  @Test
  void aChargingSupplyOverrulesAnEngineThatStands() {
    drive.go(
        200,
        now -> {
          engineRuns(now < 30);
          adapter.adapterReplies.put("ATRV", "14.2V");
        });

    assertThat(recording.story()).doesNotContain("Resting");
    assertThat(drive.lastReadAt("01.05")).isGreaterThan(195);
  }

  // 24 V systems rest at about 25 V and charge at about 28 V (common practice, no source).
  @Test
  void aSystemOfTwoBatteriesChargesAtTwiceTheVoltage() {
    drive.go(
        400,
        now -> {
          engineRuns(now < 30 || now > 300);
          adapter.adapterReplies.put("ATRV", now < 30 || now > 300 ? "27.9V" : "25.1V");
        });

    assertThat(sentBetween(100, 300)).containsOnly("ATRV");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(395);
  }

  // Text "?", and an alternator that saves fuel or an adapter that measures badly.
  @Test
  void whereTheVoltageDoesNotTellTheBusIsAskedSeldom() {
    for (String voltage : List.of("?", "12.9V", "0.0V")) {
      ScriptedDrive other = new ScriptedDrive();
      other.go(
          600,
          now -> {
            other.vehicle.parameter("7E8", 0x0C, now < 30 || now > 400 ? "1F40" : "0000");
            other.vehicle.parameter("7E8", 0x0D, now < 30 ? "50" : "00");
            other.adapter.adapterReplies.put("ATRV", voltage);
          });

      assertThat(other.sentBetween(100, 400)).as(voltage).containsOnly("ATRV", "010C");
      assertThat(other.sentBetween(100, 400).stream().filter("010C"::equals))
          .as(voltage)
          .hasSizeBetween(4, 6);
      assertThat(other.lastReadAt("01.05")).as(voltage).isGreaterThan(595);
    }
  }

  @Test
  void afterHalfAnHourTheAdapterMaySleepAndIsWokenWithAllItsSettings() {
    List<Double> warned = new ArrayList<>();
    drive.go(
        4200,
        now -> {
          engineRuns(now < 30 || now > 3000);
          if (now > 2200 && warned.isEmpty()) {
            warned.add(now);
            adapter.unasked = "!ACT ALERT\r\r>";
          }
        });

    assertThat(sentBetween(1950, 3500)).as("nothing keeps it awake").isEmpty();
    List<String> waking = sentBetween(3500, 4200);
    assertThat(waking).startsWith("ATRV", "ATWS", "ATE0").contains("ATH1");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(4190);
  }

  // Off at 30 s, at rest from 90 s, left alone from 1890 s to 3690 s.
  @Test
  void anAdapterThatAnswersAfterHalfAnHourAsBeforeDoesNotSleepAndIsAskedOn() {
    drive.go(7500, now -> engineRuns(now < 30 || now > 7200));

    assertThat(sentBetween(1950, 3600)).isEmpty();
    assertThat(sentBetween(3700, 7200)).hasSizeBetween(170, 176).containsOnly("ATRV");
    assertThat(firstReadAfter("01.0C", 7200)).isLessThan(7225);
    assertThat(adapter.openings).isEqualTo(1);
  }

  @Test
  void anAdapterWithoutVoltageThatDoesNotSleepIsAskedOnAndTheBusEveryMinute() {
    drive.go(
        7500,
        now -> {
          engineRuns(now < 30 || now > 7200);
          adapter.adapterReplies.put("ATRV", "?");
        });

    assertThat(sentBetween(3700, 7200)).containsOnly("ATRV", "010C");
    assertThat(sentBetween(3700, 7200).stream().filter("010C"::equals)).hasSizeBetween(56, 59);
    assertThat(firstReadAfter("01.0C", 7200)).isLessThan(7270);
  }

  // An adapter that was woken says so, or swallows or spoils what woke it.
  @ParameterizedTest
  @ValueSource(strings = {"\r\rSCRIPTED ADAPTER 1\r\r>", "", "?\r\r>"})
  void anAdapterThatHadToBeWokenIsLeftAloneAgain(String waking) {
    double[] lastAt = {0};
    adapter.wire =
        reply -> {
          double now = adapter.clock.seconds();
          boolean hasSlept = now - lastAt[0] > 1200;
          lastAt[0] = now;
          return hasSlept ? waking : reply;
        };
    drive.go(7200, now -> engineRuns(now < 30));

    assertThat(sentBetween(3600, 3800)).contains("ATRV");
    assertThat(sentBetween(3850, 5400)).isEmpty();
  }

  // Without headers nobody is recognised, and the engine would never be heard.
  @Test
  void anAdapterThatLostItsSettingsUnnoticedIsSetUpAnew() {
    drive.go(
        900,
        now -> {
          engineRuns(now < 30 || now > 300);
          adapter.adapterReplies.put("ATRV", "?");
          vehicle.hidesSenders = now > 200 && !adapter.sent.contains("ATWS");
        });

    assertThat(sentBetween(200, 400)).contains("ATWS", "ATH1");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(895);
  }

  // Many adapters wake when the voltage rises, and print their name.
  @Test
  void anAdapterThatWakesByItselfIsNotWaitedFor() {
    List<Double> woken = new ArrayList<>();
    drive.go(
        3100,
        now -> {
          engineRuns(now < 30 || now > 3000);
          if (now > 3000 && woken.isEmpty()) {
            woken.add(now);
            adapter.unasked = "SCRIPTED ADAPTER 1\r\r>";
          }
        });

    assertThat(firstReadAfter("01.0C", 3000)).isLessThan(3020);
  }

  // Cranking lets the supply sag, and the adapter restarts and says so.
  @Test
  void anAdapterThatRestartsWhileRestingIsSetUpAndTheVehicleLookedFor() {
    List<String> restarts = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (adapter.clock.seconds() > 200 && restarts.isEmpty()) {
            restarts.add(reply);
            return "LV RESET\r\r>";
          }
          return reply;
        };
    drive.go(230, now -> engineRuns(now < 30 || now > 200));

    assertThat(sentBetween(199, 230)).contains("ATWS", "ATH1", "0100");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(225);
  }

  private void engineRuns(boolean runs) {
    vehicle.parameter("7E8", 0x0C, runs ? "1F40" : "0000");
    vehicle.parameter("7E8", 0x0D, runs ? "50" : "00");
    adapter.adapterReplies.put("ATRV", runs ? "14.1V" : "12.4V");
  }

  private List<String> sentBetween(double from, double until) {
    return drive.sentBetween(from, until);
  }

  private double firstReadAfter(String key, double seconds) {
    return recording.of(key).stream()
        .mapToDouble(reading -> reading.nanoTime() / 1e9)
        .filter(at -> at > seconds)
        .findFirst()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private LinkState.Resting lastResting() {
    return recording.states.stream()
        .map(Recording.Told::state)
        .filter(LinkState.Resting.class::isInstance)
        .map(LinkState.Resting.class::cast)
        .reduce((first, second) -> second)
        .orElseThrow();
  }
}
