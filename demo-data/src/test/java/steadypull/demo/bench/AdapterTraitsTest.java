package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Adapters that lack something, one by one. */
class AdapterTraitsTest {
  private static final String WARM = "demo:long-hot-grade?speed=max&start=400";

  @Test
  void whatAnAdapterLacksIsAnsweredWithAQuestionMark() throws Exception {
    Map<String, String> refused =
        Map.of(
            "no-headers", "ATH1",
            "no-formatting", "ATCAF1",
            "no-adaptive", "ATAT1",
            "no-timeout", "ATST19",
            "no-memory", "ATM0",
            "no-protocol", "ATDPN",
            "no-voltage", "ATRV",
            "no-warm-start", "ATWS",
            "no-counts", "010C1");
    for (Map.Entry<String, String> each : refused.entrySet()) {
      BenchTalk talk = BenchTalk.ready(WARM + "&adapter=" + each.getKey());

      assertThat(talk.ask(each.getValue())).as(each.getKey()).isEqualTo("?\r\r>");
      assertThat(talk.ask("010C")).as(each.getKey()).contains("410C");
    }
  }

  @Test
  void countEndsTheWaitingWhereItIsKnown() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&latency=5");
    double waited = talk.seconds(() -> talk.ask("0163"));
    double counted = talk.seconds(() -> talk.ask("01631"));

    // 34 ms is how long the bench waits for a further answer.
    assertThat(waited - counted).isBetween(0.030, 0.036);
  }

  @Test
  void headersThatAreOnlyPromisedDoNotAppear() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&adapter=sham-headers");
    talk.ask("ATE0");

    assertThat(talk.ask("ATH1")).isEqualTo("OK\r\r>");
    talk.ask("ATSP6");
    assertThat(talk.ask("0163")).isEqualTo("41 63 02 E4 \r\r>");
  }

  @Test
  void echoStaysWhereItCannotBeSwitchedOff() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&adapter=echo");

    assertThat(talk.ask("ATI")).startsWith("ATI\rSTEADYPULL");
  }

  @Test
  void slowAdapterTakesLonger() throws Exception {
    BenchTalk slow = BenchTalk.ready(WARM + "&adapter=slow");

    assertThat(slow.seconds(() -> slow.ask("ATI"))).isBetween(0.040, 0.050);
  }

  /** Calibrations of two control units with blanks at 1200 baud: far more than the line carries. */
  @Test
  void smallBufferOverflowsWhereTheLineIsSlow() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&adapter=small-buffer&baud=1200&codes=" + manyCodes());
    talk.ask("ATE0");
    talk.ask("ATH1");
    talk.ask("ATSP6");

    assertThat(talk.ask("03")).contains("7E8").endsWith("BUFFER FULL\r\r>");
    assertThat(talk.ask("0163")).contains("41 63");
  }

  private static String manyCodes() {
    StringBuilder codes = new StringBuilder("P0001");
    for (int i = 2; i < 100; i++) {
      codes.append(",P00%02d".formatted(i));
    }
    return codes.toString();
  }

  @Test
  void sleepyAdapterWarnsSleepsAndIsWokenByAnyByte() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&adapter=sleepy");

    assertThat(talk.hearAll(238)).isEmpty();
    assertThat(talk.hearAll(3)).isEqualTo("\rACT ALERT\r");
    assertThat(talk.hearAll(58)).isEqualTo("\rLP ALERT\r");
    assertThat(talk.hearAll(100)).isEmpty();
    talk.say("A");
    assertThat(talk.hearAll(1)).isEqualTo("\r\r" + AtCommands.IDENTITY + "\r\r>");
    assertThat(talk.ask("ATDPN")).as("defaults again").isEqualTo("ATDPN\rA0\r\r>");
  }

  @Test
  void anyByteKeepsASleepyAdapterAwake() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&adapter=sleepy");
    talk.pause(Duration.ofSeconds(239));
    talk.ask("ATI");

    assertThat(talk.hearAll(200)).isEmpty();
  }

  @Test
  void unknownTraitIsNamed() {
    assertThatThrownBy(() -> new BenchTalk(WARM + "&adapter=no-count"))
        .hasMessageContaining("adapter=no-count")
        .hasMessageContaining("Did you mean no-counts?")
        .hasMessageContaining("Write demo:SCENARIO");
  }
}
