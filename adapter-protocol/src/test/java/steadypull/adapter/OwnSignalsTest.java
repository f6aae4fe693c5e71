package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.diagnostic.DefinedSignal;

/** Signals of the vehicle's own, as its file defines them. In scripted time. */
class OwnSignalsTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void vehiclesOwnSignalIsAskedAtItsControlUnitAndTheHeaderRestored() {
    vehicle.fixed.put("7E1 221E1C", "7E905621E1C0820AAAA\r");

    drive.go(10);

    // 0x0820 = 2080; 2080 * 0.0625 - 40 = 90.
    assertThat(recording.of("22.1E1C.0").getFirst().value()).isEqualTo(90.0);
    assertThat(recording.of("22.1E1C.0").getFirst().controlUnit()).isEqualTo("7E9");
    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    int request = adapter.sent.indexOf("221E1C");
    assertThat(adapter.sent.subList(request - 1, request + 2))
        .containsExactly("ATSH7E1", "221E1C", "ATSH7DF");
  }

  // An adapter would cut DA18F1 to 0F1 on an 11-bit bus, which is no diagnostic identifier.
  @Test
  void signalBehindAHeaderOfAnotherProtocolIsNeverAsked() {
    drive.defined =
        List.of(new DefinedSignal(1, "18DA18F1", "long", 0, 8, false, 1, 0, "1", 0, 255));

    drive.go(10);

    assertThat(recording.of("01.0C")).isNotEmpty();
    assertThat(adapter.sent).noneMatch(line -> line.startsWith("ATSH") || line.startsWith("22"));
  }

  @Test
  void signalWithAHeaderThatIsNoneIsRefusedAtOnce() {
    for (String header : List.of("123", "7E8", "00DA18F1", "7E1\r04", "")) {
      drive.defined =
          List.of(new DefinedSignal(1, header, "wrong", 0, 8, false, 1, 0, "1", 0, 255));

      assertThatThrownBy(drive::reader)
          .hasMessageContaining("\"wrong\"")
          .hasMessageContaining("\"" + header + "\"");
    }
  }

  @Test
  void refusedIdentifierIsAskedOnceMoreAndNeverAgain() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2231AAAAAAAA\r");

    drive.go(10);

    assertThat(adapter.sent.stream().filter("221E1C"::equals)).hasSize(2);
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  // ISO 14229-1 code 78: the answer comes later, within 5 s, to the request that is still open.
  @Test
  void pendingAnswerIsWaitedFor() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2278AAAAAAAA\r|7E905621E1C0820AAAA\r");

    drive.go(40);

    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    assertThat(recording.of("22.1E1C.0")).allMatch(r -> r.value() == 90.0);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(adapter.sent).as("nothing interrupts the open request").doesNotContain("");
  }
}
