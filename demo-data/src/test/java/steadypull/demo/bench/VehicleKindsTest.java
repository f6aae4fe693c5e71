package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.LinkException;

/** Vehicles of every bus, with trouble codes, and with service 22 only. */
class VehicleKindsTest {
  private static final String WARM = "demo:long-hot-grade?speed=max&start=400";

  /** 18 DA F1 10 and the like: ISO 15765-4, from memory; printed as the sheet's corrections say. */
  @Test
  void longIdentifiersArePrintedAsFourBytes() throws Exception {
    BenchTalk talk = on(7);

    assertThat(talk.ask("0163")).isEqualTo("18DAF11004416302E4AAAAAA\r\r>");
    talk.ask("ATS1");
    assertThat(talk.ask("0163")).isEqualTo("18 DA F1 10 04 41 63 02 E4 AA AA AA \r\r>");
  }

  @Test
  void longIdentifiersAddressOneControlUnit() throws Exception {
    BenchTalk talk = on(9);
    talk.ask("ATSHDA18F1");

    assertThat(talk.ask("221E1C")).startsWith("18DAF11805621E1C");
    talk.ask("ATCRA18DAF118");
    talk.ask("ATSHDB33F1");
    assertThat(talk.ask("010D")).startsWith("18DAF118").doesNotContain("18DAF110");
  }

  /** Key bytes and their times: the sheet of transports, section 3. */
  @Test
  void fiveBaudStartIsToldInPiecesAndTakesItsTime() throws Exception {
    BenchTalk talk = on(3);
    double[] seconds = new double[1];
    StringBuilder reply = new StringBuilder();
    seconds[0] = talk.seconds(() -> reply.append(talk.ask("010D")));

    assertThat(reply.toString()).matches("BUS INIT: \\.\\.\\.OK\r(486B1[08]410D(59|5A)..\r){2}\r>");
    assertThat(seconds[0]).isBetween(2.5, 3.0);
    assertThat(talk.ask("010D")).startsWith("486B10410D");
  }

  /** P3max of 5 s: ISO 14230-2, from memory. */
  @Test
  void silenceLosesTheSessionOfTheKLine() throws Exception {
    BenchTalk talk = on(5);

    assertThat(talk.ask("010D")).startsWith("BUS INIT: OK\r83F110410D");
    talk.pause(Duration.ofSeconds(4));
    assertThat(talk.ask("010D")).startsWith("83F110410D");
    talk.pause(Duration.ofSeconds(6));
    assertThat(talk.ask("010D")).startsWith("BUS INIT: OK\r");
  }

  /** P3min of 55 ms and P2 of 25 ms at least: at most some ten requests a second. */
  @Test
  void kLineKeepsRequestsApart() throws Exception {
    BenchTalk talk = on(5);
    talk.ask("010D");
    double seconds =
        talk.seconds(
            () -> {
              for (int i = 0; i < 10; i++) {
                talk.ask("010D2");
              }
            });

    assertThat(seconds).isBetween(1.0, 1.6);
  }

  /** Worked examples of the sheet of transports, section 3. */
  @Test
  void olderBusesEndWithTheirCheckByte() throws Exception {
    assertThat(checkByte("68 6A F1 01 0C", BusProtocol.J1850_VPW)).isEqualTo(0x8B);
    assertThat(checkByte("68 6A F1 01 00", BusProtocol.J1850_PWM)).isEqualTo(0x17);
    assertThat(checkByte("C2 33 F1 01 0C", BusProtocol.ISO_14230_FAST)).isEqualTo(0xF3);
    assertThat(checkByte("68 6A F1 01 0C", BusProtocol.ISO_9141)).isEqualTo(0xD0);
  }

  private static int checkByte(String hex, BusProtocol protocol) {
    byte[] bytes = HexFormat.ofDelimiter(" ").parseHex(hex);
    byte[] whole = new OlderFrame(0, protocol, bytes).bytes();
    return whole[whole.length - 1] & 0xFF;
  }

  /** Five messages of four bytes, the first padded: the sheet of services, section 5. */
  @Test
  void identificationNumberComesInFiveMessagesOnOlderBuses() throws Exception {
    for (int protocol : List.of(1, 2, 3, 4, 5)) {
      BenchTalk talk = on(protocol);
      talk.ask("ATH0");
      String reply = talk.ask("0902");

      assertThat(reply.substring(reply.indexOf("4902")))
          .as("protocol %d", protocol)
          .isEqualTo(
              "49020100000031\r4902025A5A5450\r49020339414731\r49020452303030\r49020530303432\r"
                  + "\r>");
    }
  }

  @Test
  void olderBusesTakeOneParameterAndKnowNoManySensors() throws Exception {
    BenchTalk talk = on(2);

    assertThat(talk.ask("010C0D")).isEqualTo("NO DATA\r\r>");
    assertThat(talk.ask("0177")).isEqualTo("NO DATA\r\r>");
    assertThat(talk.ask("0140")).startsWith("486B10414044800014");
  }

  /** The sheet of services, section 1: a count on CAN, threes of codes before. */
  @Test
  void codesAreCountedOnCanAndComeByThreesBefore() throws Exception {
    String codes = "&codes=P0299@0,P0133,P2263,C0123";
    BenchTalk can = BenchTalk.ready(WARM + codes);
    assertThat(can.ask("ATH0")).startsWith("OK");
    assertThat(can.ask("03")).startsWith("00A\r0:430402990133\r1:22634123");

    BenchTalk older = on(5, codes);
    older.ask("ATH0");
    assertThat(older.ask("03"))
        .contains("\r43029901332263\r", "\r43412300000000\r", "\r43000000000000\r");
  }

  @Test
  void codeIsStoredFromItsMomentOnWithWhatWasThen() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&codes=P0299@30&pending=P0217@10");
    talk.ask("ATSH7E0");

    assertThat(talk.ask("03")).isEqualTo("7E8024300AAAAAAAAAA\r\r>");
    assertThat(talk.ask("020200")).isEqualTo("7E80542020000" + "00AAAA\r\r>");
    talk.pause(Duration.ofSeconds(12));
    assertThat(talk.ask("07")).isEqualTo("7E80447010217AAAAAA\r\r>");
    talk.pause(Duration.ofSeconds(20));
    assertThat(talk.ask("03")).isEqualTo("7E80443010299AAAAAA\r\r>");
    assertThat(talk.ask("0A")).isEqualTo("7E8044A010299AAAAAA\r\r>");
    assertThat(talk.ask("020200")).isEqualTo("7E805420200" + "0299AAAA\r\r>");
    assertThat(talk.ask("026300")).isEqualTo("7E805426300" + "02E4AAAA\r\r>");
  }

  @Test
  void gearboxKeepsItsOwnCodes() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&codes=P0218,P0741");

    assertThat(talk.ask("03")).contains("7E804430102" + "18").contains("7E904430107" + "41");
  }

  @Test
  void informationNamesUnitsAndCalibrations() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM);

    // 02, 04, 06 and 0A: bits 6, 4 and 2 of the first byte, bit 6 of the second.
    assertThat(talk.ask("0900")).contains("7E806490054400000").contains("7E906490014400000");
    assertThat(talk.ask("090A")).contains("7E81017490A0145434D").contains("7E91017490A0154434D");
    assertThat(talk.ask("0904")).contains("7E81023490402");
    assertThat(talk.ask("0906")).contains("7E8100B4906021D2C3B").contains("7E9074906010F1E2D3C");
  }

  /** From memory of SAE J1979-2, as the sheet of services has it. */
  @Test
  void vehicleOnServiceTwentyTwoKnowsNothingElse() throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&diagnostics=uds");

    assertThat(talk.ask("0100")).isEqualTo("NO DATA\r\r>");
    assertThat(talk.ask("22F810")).contains("7E80462F81001AAAAAA");
    assertThat(talk.ask("22F400")).contains("7E80762F400183B0003");
    assertThat(talk.ask("22F463")).isEqualTo("7E80562F46302E4AAAA\r\r>");
    assertThat(talk.ask("22F40CF40D")).startsWith("7E8100862F40C");
    talk.ask("ATSH7E0");
    assertThat(talk.ask("0100")).isEqualTo("7E8037F0111AAAAAAAA\r\r>");
    assertThat(talk.ask("22F190")).startsWith("7E8101462F190315A5A");
    talk.ask("ATSP0");
    assertThat(talk.ask("0100")).isEqualTo("SEARCHING...\rUNABLE TO CONNECT\r\r>");
  }

  @Test
  void searchTakesLongerTheLaterTheProtocolComesAndFindsTheWantedFirst() throws Exception {
    double usual = searching("&protocol=6", "ATTP0");
    double late = searching("&protocol=4", "ATTP0");
    double wanted = searching("&protocol=6", "ATTPA6");

    assertThat(wanted).isLessThan(usual);
    assertThat(late).isBetween(5.0, 10.0);
  }

  private static double searching(String protocol, String select) throws Exception {
    BenchTalk talk = new BenchTalk(WARM + protocol);
    talk.ask(select);
    return talk.seconds(() -> talk.ask("0100"));
  }

  @Test
  void latencyAndBaudAreWhatTheAddressSays() throws Exception {
    BenchTalk quick = BenchTalk.ready(WARM + "&latency=2&baud=2000000");
    BenchTalk slow = BenchTalk.ready(WARM + "&latency=25&baud=38400");

    // 25 ms, 6 characters out, 22 in and 1 ms of the adapter at 260 us; 2 ms and 5 us each.
    assertThat(slow.seconds(() -> slow.ask("01631"))).isBetween(0.032, 0.036);
    assertThat(quick.seconds(() -> quick.ask("01631"))).isBetween(0.003, 0.006);
  }

  @Test
  void settingsThatFitNoVehicleAreRefused() {
    for (String wrong :
        List.of("protocol=0", "diagnostics=x", "latency=-1", "codes=P9999", "baud=7")) {
      assertThatThrownBy(() -> new BenchLinks().find("demo:cool-day?" + wrong))
          .as(wrong)
          .isInstanceOf(LinkException.class)
          .hasMessageContaining("Write demo:SCENARIO");
    }
    assertThatThrownBy(() -> new BenchLinks().find("demo:cool-day?diagnostics=uds&protocol=3"))
        .hasMessageContaining("CAN");
  }

  private static BenchTalk on(int protocol) throws Exception {
    return on(protocol, "");
  }

  private static BenchTalk on(int protocol, String more) throws Exception {
    BenchTalk talk = BenchTalk.ready(WARM + "&protocol=" + protocol + more);
    talk.ask("ATSP" + protocol);
    return talk;
  }
}
