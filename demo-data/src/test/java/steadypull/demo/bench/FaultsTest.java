package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What goes wrong on purpose, kind by kind: the sheet of transports, section 4b. */
class FaultsTest {
  private static final String WARM = "demo:long-hot-grade?speed=max&start=400";

  @Test
  void requestsEndWithTheAdaptersWords() throws Exception {
    Map<String, String> words =
        Map.of(
            "can-error", "CAN ERROR",
            "bus-error", "BUS ERROR",
            "bus-busy", "BUS BUSY",
            "fb-error", "FB ERROR",
            "data-error", "DATA ERROR",
            "stopped", "STOPPED");
    for (Map.Entry<String, String> each : words.entrySet()) {
      BenchTalk talk = BenchTalk.ready(WARM + "&fault=" + each.getKey() + "@1-9");
      talk.pause(Duration.ofSeconds(2));

      assertThat(talk.ask("010C")).as(each.getKey()).isEqualTo(each.getValue() + "\r\r>");
      talk.pause(Duration.ofSeconds(8));
      assertThat(talk.ask("010C")).as(each.getKey()).startsWith("7E804410C");
    }
  }

  @Test
  void markedLinesAreWrongAndOthersRight() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=marked-data-error@1");
    talk.pause(Duration.ofSeconds(2));
    int marked = 0;
    for (int i = 0; i < 20; i++) {
      String line = talk.ask("0163").split("\r", -1)[0];
      boolean isMarked = line.endsWith("<DATA ERROR");
      assertThat(line.startsWith("7E804416302E4AAAAAA")).as(line).isNotEqualTo(isMarked);
      marked += isMarked ? 1 : 0;
    }

    assertThat(marked).isBetween(3, 17);
    BenchTalk other = BenchTalk.ready(WARM + "&fault=marked-rx-error");
    assertThat(other.hearAll(0.1) + other.ask("0902")).contains("<RX ERROR");
  }

  @Test
  void bufferFullBreaksAReplyOff() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=buffer-full");

    assertThat(talk.ask("0163")).isEqualTo("7E8044163\rBUFFER FULL\r\r>");
  }

  @Test
  void startersDipRestartsTheAdapterAndQuietsTheVehicle() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=lv-reset@2-4");
    assertThat(talk.ask("ATRV")).isEqualTo("14.1V\r\r>");

    assertThat(talk.hearAll(2.5)).isEqualTo("\r\rLV RESET\r\r>");
    assertThat(talk.ask("ATRV")).isEqualTo("ATRV\r8.6V\r\r>");
    assertThat(talk.ask("ATDPN")).contains("A0");
    talk.pause(Duration.ofSeconds(3));
    assertThat(talk.ask("ATRV")).contains("14.1V");
    assertThat(talk.ask("010D")).contains("41 0D");
  }

  @Test
  void dipInTheMiddleOfAReplyCutsIt() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=reboot@2");
    talk.pause(Duration.ofSeconds(2).minusNanos(talk.nanoTime()).minusMillis(1));
    talk.say("0902\r");

    assertThat(talk.hearAll(1)).isEqualTo("\r\r" + AtCommands.IDENTITY + "\r\r>");
  }

  @Test
  void internalErrorLosesTheSettings() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=err94@1-2");
    talk.pause(Duration.ofSeconds(1));

    assertThat(talk.ask("010C")).isEqualTo("ERR94\r\r>");
    assertThat(talk.ask("ATI")).startsWith("ATI\r");
  }

  @Test
  void alertComesInTheMiddleOfAReply() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&latency=10&fault=act-alert@2");
    talk.pause(Duration.ofSeconds(2).minusNanos(talk.nanoTime()).minusMillis(13));

    assertThat(talk.ask("0902"))
        .matches("7E81014[0-9A-F]+\rACT ALERT\r[0-9A-F]+\r7E821.*\r7E822.*\r\r>");
  }

  @Test
  void lateAnswerStandsInTheNextReply() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=late-answer");
    int late = 0;
    boolean isOwed = false;
    for (int i = 0; i < 30; i++) {
      String reply = talk.ask(i % 2 == 0 ? "0163" : "0133");
      boolean isMissing = reply.startsWith("NO DATA");
      if (isOwed) {
        assertThat(reply.contains(i % 2 == 0 ? "4133" : "4163")).isNotEqualTo(isMissing);
      }
      late += isMissing ? 1 : 0;
      isOwed = isMissing;
    }

    assertThat(late).isBetween(3, 20);
  }

  @Test
  void framesGoMissingOrGetWrongNumbers() throws Exception {
    BenchTalk missing = BenchTalk.ready(WARM + "&fault=missing-frame");
    BenchTalk wrong = BenchTalk.ready(WARM + "&fault=wrong-sequence");

    assertThat(missing.ask("0902").split("\r", -1)).hasSize(4);
    assertThat(wrong.ask("0902")).startsWith("7E810").doesNotMatch("(?s).*7E821.*7E822.*");
  }

  @Test
  void thirdControlUnitsFramesStandBetweenTheEngines() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=interleaved");
    String reply = talk.ask("01040C0D0B6162");

    assertThat(reply.replaceAll("(7E.)(..)[0-9A-F]+", "$1.$2"))
        .startsWith("7E8.10\r")
        .matches("(?s).*7E8.21\r7EA.21\r7E8.22\r7EA.22\r.*");
  }

  @Test
  void fillerIsOfAnyValue() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=padding");
    Set<String> fillers = new HashSet<>();
    for (int i = 0; i < 20; i++) {
      Matcher line = Pattern.compile("7E804416302E4((..)\\2\\2)\r").matcher(talk.ask("0163"));
      assertThat(line.find()).isTrue();
      fillers.add(line.group(2));
    }

    assertThat(fillers).hasSizeGreaterThan(10);
  }

  @Test
  void nulsAndFlippedBitsTouchCharactersOnly() throws Exception {
    BenchTalk nuls = BenchTalk.ready(WARM + "&fault=nuls@1");
    nuls.pause(Duration.ofSeconds(1));
    String reply = nuls.ask("0902");
    assertThat(reply).contains("\0");
    assertThat(reply.replace("\0", "")).startsWith("7E81014490201315A5A\r7E821");

    BenchTalk flipped = BenchTalk.ready(WARM + "&fault=flipped-bits@1");
    flipped.pause(Duration.ofSeconds(1));
    StringBuilder wrong = new StringBuilder();
    for (int i = 0; i < 10; i++) {
      flipped.say("0163\r");
      wrong.append(flipped.hearAll(1));
    }
    assertThat(wrong.toString().replaceAll("7E804416302E4AAAAAA\r\r>", "")).isNotEmpty();
  }

  @Test
  void stoppedEngineAnswersAndNothingCharges() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=engine-stopped@1-5");
    talk.pause(Duration.ofSeconds(2));

    assertThat(talk.ask("010C")).startsWith("7E804410C0000");
    assertThat(talk.ask("ATRV")).isEqualTo("12.4V\r\r>");
    talk.pause(Duration.ofSeconds(5));
    assertThat(talk.ask("ATRV")).isEqualTo("14.1V\r\r>");
  }

  @Test
  void adapterThatWasUnpluggedComesBackWithDefaults() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=vanish@2-3");
    talk.pause(Duration.ofSeconds(4));

    assertThat(talk.ask("ATI")).startsWith("ATI\r");
  }

  @Test
  void twoOfAKindAtOnceAreRefused() {
    assertThatThrownBy(() -> new BenchTalk(WARM + "&fault=nuls@1-5&fault=nuls@4-9"))
        .hasMessageContaining("overlap");
  }
}
