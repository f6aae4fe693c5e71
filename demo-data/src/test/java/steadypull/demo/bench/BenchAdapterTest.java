package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/** The dialogue of an AT-command adapter, as the sheet of transports describes it. */
class BenchAdapterTest {
  private static final String WARM = "demo:long-hot-grade?speed=max&start=400";

  @Test
  void freshAdapterEchoesAndSearchesBeforeItAnswers() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);

    assertThat(talk.ask("010D")).matches("010D\rSEARCHING...\r41 0D (59|5A) \r41 0D (59|5A) \r\r>");
    assertThat(talk.ask("ATDPN")).isEqualTo("ATDPN\rA6\r\r>");
  }

  @Test
  void echoOfTheCommandThatEndsItIsTheLastEcho() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);

    assertThat(talk.ask("ATE0")).isEqualTo("ATE0\rOK\r\r>");
    assertThat(talk.ask("ATI")).isEqualTo(AtCommands.IDENTITY + "\r\r>");
  }

  @Test
  void headersShowControlUnitsAndFiller() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    assertThat(talk.ask("010D")).matches("7E803410D(59|5A)AAAAAAAA\r7E903410D(59|5A)AAAAAAAA\r\r>");
    assertThat(talk.ask("ATS1")).isEqualTo("OK\r\r>");
    assertThat(talk.ask("01 63 1")).isEqualTo("7E8 04 41 63 02 E4 AA AA AA \r\r>");
  }

  /** ISO 15765-2: first frame with the length, consecutive frames counted from 1. */
  @Test
  void sixParametersComeInSeveralFrames() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    String reply = talk.ask("0104050C0D0F62");
    String[] lines = reply.split("\r", -1);

    assertThat(lines[0]).startsWith("7E8100E4104");
    assertThat(reply).contains("\r7E821").contains("\r7E822").contains("7E903410D");
    assertThat(payload(reply, "7E8", 14))
        .hasSize(14)
        .startsWith(0x41, 0x04)
        .contains(0x05, 0x0C, 0x0D, 0x0F, 0x62);
  }

  /** Shape of the sheet of transports, table 4a, row "H0, multi-frame". */
  @Test
  void identificationNumberWithoutHeadersHasALengthLine() throws Exception {
    BenchTalk talk = new BenchTalk(WARM);
    talk.ask("ATE0");
    talk.ask("ATSP6");

    assertThat(talk.ask("0902"))
        .isEqualTo(
            "014 \r0: 49 02 01 31 5A 5A \r1: 54 50 39 41 47 31 52 \r2: 30 30 30 30 30 34 32 \r\r>");
  }

  @Test
  void supportMapsChainUpToTheGear() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    // 04 05 0B 0C 0D 0F 10 1F and the next map; bit 7 of the first byte is 01.
    assertThat(talk.ask("0100")).contains("7E8064100183B0003AA");
    assertThat(talk.ask("0120")).contains("7E8064120").contains("7E9064120");
    assertThat(talk.ask("01A0")).isEqualTo("7E90641A010000000AA\r\r>");
    assertThat(talk.ask("01C0")).isEqualTo("NO DATA\r\r>");
  }

  @Test
  void nobodyAnswersAnUnknownParameterThatWentToEverybody() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    assertThat(talk.ask("0166")).isEqualTo("NO DATA\r\r>");
    assertThat(talk.ask("ATSH7E0")).isEqualTo("OK\r\r>");
    assertThat(talk.ask("0166")).isEqualTo("7E8037F0112AAAAAAAA\r\r>");
    assertThat(talk.ask("221E1C")).isEqualTo("7E8037F2231AAAAAAAA\r\r>");
  }

  @Test
  void gearboxTellsItsFluidTemperatureBehindAnIdentifier() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATSH7E1");
    String reply = talk.ask("221E1C");
    int raw = HexFormat.fromHexDigits(reply.substring(11, 15));

    assertThat(reply).startsWith("7E905621E1C");
    assertThat(raw * 0.0625 - 40).isBetween(75.0, 100.0);
  }

  @Test
  void noTroubleCodesAreStored() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    assertThat(talk.ask("03")).contains("7E8024300AA").contains("7E9024300AA");
    assertThat(talk.ask("07")).contains("7E8024700AA");
    assertThat(talk.ask("0A")).contains("7E8024A00AA");
  }

  @Test
  void sensorsOfOneParameterStandBesideEachOther() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    int[] coolants = payload(talk.ask("0167"), "7E8", 5);
    int[] turbo = payload(talk.ask("0175"), "7E8", 9);
    int[] cooler = payload(talk.ask("0177"), "7E8", 7);

    assertThat(coolants[2]).isEqualTo(0x03);
    assertThat(coolants[3] - 40).isBetween(85, 105);
    assertThat(coolants[4] - 40).isBetween(60, 95);
    assertThat(turbo[2]).isEqualTo(0x03);
    assertThat(turbo[4] - 40).as("compressor outlet").isBetween(140, 200);
    assertThat(cooler[2]).isEqualTo(0x01);
    assertThat(cooler[3] - 40).as("after the cooler").isBetween(coolants[4] - 42, 110);
  }

  /** One byte holds 255 kPa at most; the wide parameter goes on. */
  @Test
  void manifoldPressureIsClippedInTheNarrowParameterOnly() throws Exception {
    BenchTalk talk = BenchTalk.ready("demo:dyno-pull?speed=max&start=105");
    int wide = 0;
    int narrow = 0;
    for (int i = 0; i < 30 && wide / 32 <= 256; i++) {
      int[] both = payload(talk.ask("010B87"), "7E8", 9);
      narrow = both[2];
      wide = both[5] << 8 | both[6];
      talk.pause(Duration.ofSeconds(1));
    }

    assertThat(wide / 32).isGreaterThan(255);
    assertThat(narrow).isGreaterThanOrEqualTo(254);
  }

  @Test
  void loneReturnRepeatsTheLastCommand() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATDPN");

    assertThat(talk.ask("")).isEqualTo("6\r\r>");
  }

  @Test
  void whatIsNotUnderstoodIsAnsweredWithAQuestionMark() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    assertThat(talk.ask("ATXYZ")).isEqualTo("?\r\r>");
    assertThat(talk.ask("HELLO")).isEqualTo("?\r\r>");
    assertThat(talk.ask("01040B0C0D0F1011")).as("more than a frame carries").isEqualTo("?\r\r>");
  }

  @Test
  void byteWhileBusyStopsTheRequest() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.say("0166\r");
    talk.pause(Duration.ofMillis(20));

    assertThat(talk.ask("0")).isEqualTo("STOPPED\r\r>");
  }

  @Test
  void wrongProtocolIsAnErrorOfTheBus() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATSP8");

    assertThat(talk.ask("0100")).isEqualTo("CAN ERROR\r\r>");
  }

  @Test
  void engineIsOffWhenTheDriveHasEnded() throws Exception {
    BenchTalk talk = BenchTalk.ready("demo:dyno-pull?speed=max&start=195");
    talk.pause(Duration.ofSeconds(6));

    assertThat(talk.ask("010C")).isEqualTo("NO DATA\r\r>");
    assertThat(talk.ask("ATRV")).isEqualTo("12.4V\r\r>");
    assertThat(talk.ask("ATIGN")).isEqualTo("OFF\r\r>");
    talk.ask("ATSP0");
    assertThat(talk.ask("0100")).isEqualTo("SEARCHING...\rUNABLE TO CONNECT\r\r>");
  }

  @Test
  void pendingAnswerIsFollowedByTheRealOne() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&fault=pending");
    talk.ask("ATSH7E1");

    assertThat(talk.ask("221E1C")).startsWith("7E9037F2278AAAAAAAA\r7E905621E1C");
  }

  @Test
  void receiveFilterLeavesOneControlUnit() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATCRA7E9");

    assertThat(talk.ask("010D")).matches("7E903410D(59|5A)AAAAAAAA\r\r>");
    talk.ask("ATCRA");
    assertThat(talk.ask("010D")).contains("7E8").contains("7E9");
  }

  @Test
  void shortTimeoutLosesAnswers() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATST01");

    assertThat(talk.ask("010C")).isEqualTo("NO DATA\r\r>");
  }

  @Test
  void resetForgetsEverything() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    assertThat(talk.ask("ATZ")).isEqualTo("\r\r" + AtCommands.IDENTITY + "\r\r>");
    assertThat(talk.ask("ATDPN")).isEqualTo("ATDPN\rA0\r\r>");
  }

  @Test
  void clearingRequestIsRefusedByEveryControlUnit() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);
    talk.ask("ATSH7E0");

    assertThat(talk.ask("04")).isEqualTo("7E8037F0411AAAAAAAA\r\r>");
  }

  /** The payload of one control unit's answer, cut at its length. */
  private static int[] payload(String reply, String unit, int length) {
    StringBuilder hex = new StringBuilder();
    for (String line : reply.split("\r", -1)) {
      if (line.startsWith(unit)) {
        boolean isFirst = line.charAt(3) == '1';
        hex.append(line.substring(isFirst ? 7 : 5));
      }
    }
    byte[] bytes = HexFormat.of().parseHex(hex.substring(0, length * 2));
    int[] values = new int[length];
    for (int i = 0; i < length; i++) {
      values[i] = bytes[i] & 0xFF;
    }
    return values;
  }
}
