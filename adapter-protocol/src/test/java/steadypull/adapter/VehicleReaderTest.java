package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Stories of whole drives in scripted time. */
class VehicleReaderTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void bytesBecomeReadingsOfTheEngine() {
    vehicle.fixed.put(
        "7DF 0902",
        String.join(
            "", ScriptedVehicle.frames("7E8", "490201" + "315A5A5450394147315230303030303432")));

    drive.go(20);

    // Values: worked example of a request for six parameters, computed from SAE J1979 scaling.
    assertThat(recording.of("01.0C")).isNotEmpty();
    assertThat(recording.of("01.0C")).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.05")).allMatch(r -> r.value() == 90.0);
    assertThat(recording.of("01.04").getFirst().value()).isCloseTo(49.80, within(0.01));
    assertThat(recording.of("01.67.2").getFirst().value()).isEqualTo(70.0);
    assertThat(recording.of("01.77.1").getFirst().value()).isEqualTo(82.0);
    assertThat(recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(recording.connected().adapter()).isEqualTo("SCRIPTED ADAPTER 1");
    assertThat(recording.connected().protocol()).contains("15765-4");
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // The transmission answers the same functional requests; its values must not mix in.
  @Test
  void theEngineIsBelievedWhereTwoControlUnitsAnswer() {
    drive.go(10);

    assertThat(recording.of("01.0D")).allMatch(r -> r.controlUnit().equals("7E8"));
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
  }

  @Test
  void onlySensorsThatExistAreOffered() {
    drive.go(10);

    assertThat(recording.connected().signals())
        .contains("01.77.1", "01.77.2", "01.67.1")
        .doesNotContain("01.77.3", "01.5E", "01.62");
    assertThat(recording.of("01.77.3")).isEmpty();
  }

  // While a bus wakes up, one control unit may answer the search and another be late.
  @Test
  void controlUnitThatMissedTheSearchIsFoundAllTheSame() {
    List<String> cut = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E8064100") && cut.isEmpty()) {
            cut.add(reply);
            return reply.substring(reply.indexOf("7E9"));
          }
          return reply;
        };

    drive.go(10);

    assertThat(cut).hasSize(1);
    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.controlUnit().equals("7E8"));
  }

  @Test
  void repliesCutAnywhereAreStillRead() {
    adapter.mostBytesPerRead = 1;

    drive.go(10);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  @Test
  void everythingSentOnlyReads() {
    drive.go(
        120,
        now -> {
          vehicle.isAwake = now < 20 || now > 50;
          adapter.isMute = now > 70 && now < 75;
        });

    assertThat(adapter.sent)
        .allMatch(
            line ->
                line.isEmpty()
                    || line.matches(
                        "(01|02|09|22)[0-9A-F]+|0[37A]|AT(I|Z|WS|PC|RV|DPN?|E0|L0|S0|H1|CAF1|AT1|M0|ST[0-9A-F]{2})|ATTP(0|A6|[6-9])|ATSH(7DF|7E1)"));
  }

  // One bit on a noisy line makes "not here" of "busy", and no check byte tells.
  @Test
  void oneRefusalThatMayBeDamageDoesNotEndAParameter() {
    drive.wanted = Set.of("01.05");
    vehicle.parameter("7E8", 0x05, "82");

    drive.go(
        20,
        now -> {
          vehicle.fixed.clear();
          if (now > 5 && now < 6) {
            vehicle.fixed.put("7DF 0105", "7E8037F0131AAAAAAAA\r");
          }
        });

    assertThat(recording.of("01.05").getLast().nanoTime()).isGreaterThan(15_000_000_000L);
  }
}
