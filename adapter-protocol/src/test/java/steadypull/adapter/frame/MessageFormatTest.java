package steadypull.adapter.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Segments: ISO 15765-2, frame kinds and the length and sequence rules; identifiers: ISO 15765-4.
 * Worked examples computed by hand from these rules.
 */
class MessageFormatTest {
  private static final List<String> EXHAUST = List.of("7E8100B417807170C12", "7E8215C0FA00000AAAA");

  @Test
  void singleFrameEndsAtItsLengthAndFillerIsIgnored() {
    assertThat(MessageFormat.CAN_11_BIT.messages(List.of("7E804410C1F40AAAAAA")))
        .containsExactly(message("7E8", "41 0C 1F 40"));
  }

  @Test
  void frameWithoutFillerIsReadToo() {
    assertThat(MessageFormat.CAN_11_BIT.messages(List.of("7E804410C1F40")))
        .containsExactly(message("7E8", "41 0C 1F 40"));
  }

  @Test
  void longIdentifierIsKeptWhole() {
    assertThat(MessageFormat.CAN_29_BIT.messages(List.of("18DAF11004410C1F40AAAAAA")))
        .containsExactly(message("18DAF110", "41 0C 1F 40"));
  }

  @Test
  void segmentsBecomeOneMessageOfTheLengthToldFirst() {
    assertThat(MessageFormat.CAN_11_BIT.messages(EXHAUST))
        .containsExactly(message("7E8", "41 78 07 17 0C 12 5C 0F A0 00 00"));
  }

  // Request for six parameters: 14 bytes in three frames.
  @Test
  void lastSegmentMayCarryOneByte() {
    assertThat(
            MessageFormat.CAN_11_BIT.messages(
                List.of("7E8100E41047F05820B", "7E821C80C1F400D500F", "7E8224BAAAAAAAAAAAA")))
        .containsExactly(message("7E8", "41 04 7F 05 82 0B C8 0C 1F 40 0D 50 0F 4B"));
  }

  @Test
  void interleavedControlUnitsAreKeptApart() {
    assertThat(
            MessageFormat.CAN_11_BIT.messages(
                List.of(
                    EXHAUST.get(0), "7E9100B417807AAAAAA", "7E9037F0112AAAAAAAA", EXHAUST.get(1))))
        .containsExactly(
            message("7E9", "7F 01 12"), message("7E8", "41 78 07 17 0C 12 5C 0F A0 00 00"));
  }

  @Test
  void sequenceNumbersWrapAfterFifteen() {
    Payload payload = randomPayload(new Random(1), 200);

    assertThat(MessageFormat.CAN_11_BIT.messages(segments("7E8", payload)))
        .containsExactly(new Message("7E8", payload));
  }

  @Test
  void missingRepeatedOrSwappedSegmentDropsTheMessage() {
    long seed = 99;
    Random random = new Random(seed);
    for (int round = 0; round < 2000; round++) {
      List<String> lines = segments("7E8", randomPayload(random, 21 + random.nextInt(80)));
      int at = 1 + random.nextInt(lines.size() - 2);
      switch (random.nextInt(3)) {
        case 0 -> lines.remove(at);
        case 1 -> lines.add(at, lines.get(at));
        case 2 -> lines.add(at + 1, lines.remove(at));
        default -> throw new AssertionError();
      }
      assertThat(MessageFormat.CAN_11_BIT.messages(lines))
          .as("seed %d, round %d", seed, round)
          .isEmpty();
    }
  }

  @Test
  void everyLengthSurvivesTheWay() {
    Random random = new Random(7);
    for (int length = 1; length <= 300; length++) {
      Payload payload = randomPayload(random, length);
      assertThat(MessageFormat.CAN_29_BIT.messages(segments("18DAF110", payload)))
          .as("length " + length)
          .containsExactly(new Message("18DAF110", payload));
    }
  }

  @Test
  void linesCutAnywhereNeverGiveAWrongMessage() {
    for (int cut = 0; cut < EXHAUST.get(1).length(); cut++) {
      List<Message> messages =
          MessageFormat.CAN_11_BIT.messages(
              List.of(EXHAUST.get(0), EXHAUST.get(1).substring(0, cut)));
      // Five payload bytes stand in the last frame: 3 + 2 + 10 digits; then only filler is cut.
      boolean isFillerOnly = cut >= 15 && cut % 2 == 1;
      assertThat(messages).as("cut at " + cut).hasSize(isFillerOnly ? 1 : 0);
    }
  }

  @Test
  void randomCorruptionNeverThrowsAndNeverLengthensAMessage() {
    long seed = 31;
    Random random = new Random(seed);
    String digits = "0123456789ABCDEF";
    for (int round = 0; round < 20_000; round++) {
      List<String> lines = new ArrayList<>();
      for (String line : EXHAUST) {
        StringBuilder damaged = new StringBuilder(line);
        damaged.setCharAt(random.nextInt(line.length()), digits.charAt(random.nextInt(16)));
        lines.add(damaged.toString());
      }
      for (Message message : MessageFormat.CAN_11_BIT.messages(lines)) {
        assertThat(message.payload().size())
            .as("seed %d, round %d, %s", seed, round, lines)
            .isBetween(1, 13);
      }
    }
  }

  @Test
  void impossibleLengthsAreRefused() {
    assertThat(
            MessageFormat.CAN_11_BIT.messages(
                List.of(
                    "7E800410C1F40AAAAAA", // length 0
                    "7E808410C1F40AAAAAA", // more than seven in a single frame
                    "7E804410C1F", // shorter than its length
                    "7E81003410C1F40AAAA", // first frame of a message that fits a single one
                    "7E8", // no bytes
                    "7E804410C1F40AAAAAAAA", // nine bytes
                    "7E8300000", // flow control
                    "7E8F4410C1F40AAAAAA"))) // reserved kind
        .isEmpty();
  }

  // Check bytes: sum modulo 256; J1850 CRC-8, polynomial 1D; examples of requests from the bus
  // standards as computed in the transport sheet (68 6A F1 01 0C + D0, C2 33 F1 01 0C + F3,
  // 68 6A F1 01 0C + 8B).
  @Test
  void checkBytesOfTheOlderBuses() {
    assertThat(Checksum.SUM.of(Payload.ofHex("68 6A F1 01 0C"))).isEqualTo(0xD0);
    assertThat(Checksum.SUM.of(Payload.ofHex("C2 33 F1 01 0C"))).isEqualTo(0xF3);
    assertThat(Checksum.J1850_CRC.of(Payload.ofHex("68 6A F1 01 0C"))).isEqualTo(0x8B);
    assertThat(Checksum.J1850_CRC.of(Payload.ofHex("68 6A F1 01 00"))).isEqualTo(0x17);
  }

  @Test
  void olderBusesGiveTheSourceAndTheDataBetweenHeaderAndCheck() {
    // 48+6B+10+41+0C+1F+40 = 16F; 84+F1+11+41+0C+1F+40 = 232.
    assertThat(MessageFormat.ISO_9141.messages(List.of("486B10410C1F406F")))
        .containsExactly(message("10", "41 0C 1F 40"));
    assertThat(MessageFormat.ISO_14230.messages(List.of("84F111410C1F4032")))
        .containsExactly(message("11", "41 0C 1F 40"));
    assertThat(MessageFormat.ISO_9141.messages(List.of("486B10410C1F4070"))).isEmpty();
    assertThat(MessageFormat.ISO_14230.messages(List.of("83F111410C1F4031"))).isEmpty();
    assertThat(MessageFormat.J1850.messages(List.of("686AF1010C8B")))
        .containsExactly(message("F1", "01 0C"));
  }

  // Numbers as adapters print them: data sheet of an AT-command adapter.
  @Test
  void protocolNumbersSelectTheFormat() {
    assertThat(MessageFormat.ofProtocol("6")).contains(MessageFormat.CAN_11_BIT);
    assertThat(MessageFormat.ofProtocol("7")).contains(MessageFormat.CAN_29_BIT);
    assertThat(MessageFormat.ofProtocol("3")).contains(MessageFormat.ISO_9141);
    assertThat(MessageFormat.ofProtocol("5")).contains(MessageFormat.ISO_14230);
    assertThat(MessageFormat.ofProtocol("2")).contains(MessageFormat.J1850);
    assertThat(MessageFormat.ofProtocol("A")).isEmpty();
    assertThat(MessageFormat.ofProtocol("")).isEmpty();
    assertThat(MessageFormat.ofLine("7E804410C1F40AAAAAA")).isEqualTo(MessageFormat.CAN_11_BIT);
    assertThat(MessageFormat.ofLine("18DAF11004410C1F40AAAAAA"))
        .isEqualTo(MessageFormat.CAN_29_BIT);
  }

  private static Message message(String controlUnit, String hex) {
    return new Message(controlUnit, Payload.ofHex(hex));
  }

  private static Payload randomPayload(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return Payload.of(bytes);
  }

  /** Cuts a payload into frames with filler, by the rules of the standard. */
  private static List<String> segments(String identifier, Payload payload) {
    String hex = payload.toString();
    List<String> lines = new ArrayList<>();
    if (payload.size() <= 7) {
      lines.add(filled(identifier, "0%X%s".formatted(payload.size(), hex)));
      return lines;
    }
    lines.add(identifier + "1%03X%s".formatted(payload.size(), hex.substring(0, 12)));
    for (int at = 12, number = 1; at < hex.length(); at += 14, number++) {
      String part = hex.substring(at, Math.min(hex.length(), at + 14));
      lines.add(filled(identifier, "2%X%s".formatted(number % 16, part)));
    }
    return lines;
  }

  private static String filled(String identifier, String frame) {
    return identifier + frame + "55".repeat(8 - frame.length() / 2);
  }
}
