package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The dialogue of a serial CAN adapter: the sheet of transports, sections 2 and 5. */
class SerialCanBenchTest {
  private static final String WARM =
      "demo:long-hot-grade?speed=max&start=400&adapter=serial-can&latency=10";
  private static final String BELL = "\u0007";
  private static final String ASK_VIN = "t7DF8020902" + "0000000000\r";
  private static final String GO_ON = "t7E08300000" + "0000000000\r";

  @Test
  void channelIsOpenedOnceARateIsChosen() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);

    assertThat(say(talk, "O")).isEqualTo(BELL);
    assertThat(say(talk, "S6")).isEqualTo("\r");
    assertThat(say(talk, "O")).isEqualTo("\r");
    assertThat(say(talk, "S5")).as("a rate while open").isEqualTo(BELL);
    assertThat(say(talk, "F")).isEqualTo("F00\r");
    assertThat(say(talk, "C")).isEqualTo("\r");
    assertThat(say(talk, "F")).as("a status while closed").isEqualTo(BELL);
  }

  @Test
  void versionAndNumberAreToldAndTheRestIsRefused() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);

    assertThat(say(talk, "V")).matches("V[0-9]{4}\r");
    assertThat(say(talk, "N")).startsWith("N").endsWith("\r");
    for (String wrong : List.of("ATI", "", "S9", "t7DF", "x")) {
      assertThat(say(talk, wrong)).as(wrong).isEqualTo(BELL);
    }
  }

  /** The sheet's example: ask for the engine speed, 7DF 02 01 0C. */
  @Test
  void requestIsTakenAndAnswersComeUnasked() throws Exception {
    BenchTalk talk = opened("S6");

    assertThat(say(talk, "t7DF8020163" + "0000000000")).isEqualTo("z\rt7E8804416302E4AAAAAA\r");
    assertThat(say(talk, "t7E0802010D" + "00000000")).as("bytes missing").isEqualTo(BELL);
  }

  @Test
  void longAnswerGoesOnOnlyAfterFlowControl() throws Exception {
    BenchTalk talk = opened("S6");
    talk.say(ASK_VIN);
    assertThat(talk.hearAll(0.04)).isEqualTo("z\rt7E88101449020131" + "5A5A\r");
    talk.say(GO_ON);

    assertThat(talk.hearAll(0.5))
        .isEqualTo("z\rt7E88215450394147" + "3152\rt7E88223030303030" + "3432\r");
  }

  /** N_Bs is 75 ms: ISO 15765-4, from memory. */
  @Test
  void flowControlThatComesTooLateIsOfNoUse() throws Exception {
    BenchTalk talk = opened("S6");
    talk.say(ASK_VIN);
    talk.hearAll(0.12);
    talk.say(GO_ON);

    assertThat(talk.hearAll(0.5)).isEqualTo("z\r");
  }

  @Test
  void blockSizeAndWaitingAreObeyed() throws Exception {
    BenchTalk talk = opened("S6");
    talk.say(ASK_VIN);
    talk.hearAll(0.05);
    talk.say("t7E08310000" + "0000000000\r");
    talk.hearAll(0.05);
    talk.say("t7E08300100" + "0000000000\r");
    assertThat(talk.hearAll(0.05)).startsWith("z\rt7E8821").doesNotContain("t7E8822");
    talk.say("t7E08300100" + "0000000000\r");
    assertThat(talk.hearAll(0.05)).startsWith("z\rt7E8822");
  }

  @Test
  void overflowEndsAnAnswer() throws Exception {
    BenchTalk talk = opened("S6");
    talk.say(ASK_VIN);
    talk.hearAll(0.05);
    talk.say("t7E08320000" + "0000000000\r" + GO_ON);

    assertThat(talk.hearAll(0.5)).isEqualTo("z\rz\r");
  }

  /** STmin 7F is 127 ms, F5 is 500 us: ISO 15765-2. */
  @Test
  void separationOfConsecutiveFramesIsKept() throws Exception {
    assertThat(vinSeconds("7F")).isBetween(0.127, 0.135);
    assertThat(vinSeconds("F5")).isLessThan(0.01);
    assertThat(vinSeconds("80")).as("reserved, counts as 7F").isGreaterThan(0.127);
  }

  private static double vinSeconds(String separation) throws Exception {
    BenchTalk talk = opened("S6");
    talk.say(ASK_VIN);
    talk.hearAll(0.05);
    talk.say("t7E083000" + separation + "0000000000\r");
    StringBuilder heard = new StringBuilder();
    return talk.seconds(
        () -> {
          while (heard.indexOf("t7E8822") < 0) {
            heard.append(talk.hear(1));
          }
        });
  }

  @Test
  void wrongRateIsSilenceAndAnErrorInTheStatus() throws Exception {
    BenchTalk talk = opened("S5");

    assertThat(say(talk, "t7DF8020100" + "0000000000")).isEqualTo("z\r");
    assertThat(say(talk, "F")).isEqualTo("F84\r");
  }

  @Test
  void longIdentifiersGoBothWays() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&protocol=9");
    say(talk, "S5");
    say(talk, "O");

    assertThat(say(talk, "T18DB33F18020163" + "0000000000"))
        .isEqualTo("Z\rT18DAF110804416302E4AAAAAA\r");
    assertThat(say(talk, "t7DF8020163" + "0000000000")).as("11 bits").isEqualTo("z\r");
  }

  @Test
  void stampsAreMillisecondsOfTheMinute() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);
    say(talk, "S6");
    assertThat(say(talk, "Z1")).isEqualTo("\r");
    say(talk, "O");
    String reply = say(talk, "t7DF8020163" + "0000000000");

    assertThat(reply).matches("z\rt7E8804416302E4AAAAAA[0-9A-F]{4}\r");
  }

  @Test
  void listeningChannelSendsNothing() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);
    say(talk, "S6");
    assertThat(say(talk, "L")).isEqualTo("\r");

    assertThat(say(talk, "t7DF8020163" + "0000000000")).isEqualTo(BELL);
  }

  @Test
  void adapterThatLostItsPowerIsClosedAfterwards() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&fault=reboot@5-6");
    say(talk, "S6");
    say(talk, "O");
    talk.pause(Duration.ofSeconds(6));

    assertThat(say(talk, "t7DF8020163" + "0000000000")).isEqualTo(BELL);
  }

  @Test
  void whatControlUnitsSayToEachOtherIsHeardToo() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&traffic=100");
    say(talk, "S6");
    say(talk, "O");
    String heard = talk.hearAll(1);

    assertThat(heard.split("\r", -1)).hasSizeBetween(100, 102);
    assertThat(heard).contains("\rt0A08").doesNotContain("t7E8");
    assertThat(say(talk, "t7DF8020163" + "0000000000")).contains("z\r", "t7E8804416302E4AAAAAA\r");
  }

  /** At 115200 baud a line of 22 characters takes 1.9 ms: some 520 a second, of 2000. */
  @Test
  void moreThanTheLineCarriesIsLostAndTheStatusTellsSo() throws Exception {
    BenchTalk talk = new BenchTalk(WARM + "&traffic=2000");
    say(talk, "S6");
    say(talk, "O");

    assertThat(talk.hearAll(2).split("\r", -1)).hasSizeBetween(1000, 1060);
    talk.say("F\r");
    assertThat(talk.hearAll(0.3)).contains("F08\r");
  }

  @Test
  void serialCanStandsAlone() {
    assertThatThrownBy(() -> new BenchTalk(WARM + "&adapter=slow"))
        .hasMessageContaining("serial-can stands alone");
  }

  private static BenchTalk opened(String rate) throws Exception {
    BenchTalk talk = new BenchTalk(WARM);
    say(talk, rate);
    say(talk, "O");
    return talk;
  }

  private static String say(BenchTalk talk, String line) throws Exception {
    talk.say(line + "\r");
    return talk.hearAll(0.06);
  }
}
