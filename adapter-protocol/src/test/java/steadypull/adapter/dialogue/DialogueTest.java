package steadypull.adapter.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Reply texts: data sheet of an AT-command adapter; those marked "memory" from memory. */
class DialogueTest {
  private static final String RPM = "7E804410C1F40AAAAAA";

  static Stream<Arguments> replies() {
    return Stream.of(
        // Data in their shapes.
        reply("010C", RPM + "\r\r>", data(RPM)),
        reply("010C", "7E8 04 41 0C 1F 40 AA AA AA \r\r>", data(RPM)),
        reply("010C", "7E8 04 41 0C 1F 40 AA AA AA \r\n\r\n>", data(RPM)),
        reply("010C", "010C\r" + RPM + "\r\r>", data(RPM)),
        reply("010C", "01 0C\r" + RPM + "\r\r>", data(RPM)),
        reply("010C", "SEARCHING..." + RPM + "\r\r>", data(RPM)),
        reply("010C", "SEARCHING...\r" + RPM + "\r\r>", data(RPM)),
        reply("010C", "010C\rSEARCHING..." + RPM + "\r\r>", data(RPM)),
        reply("010C", "\u0000" + RPM + "\u0000\r\r>", data(RPM)),
        reply("010C", "!ACT ALERT\r" + RPM + "\r\r>", data(RPM)),
        reply("010C", RPM + "\r<DATA ERROR\r\r>", data(RPM)),
        reply("010C", "BUS INIT: ...OK\r486B10410C1F40FF\r\r>", data("486B10410C1F40FF")), // memory
        reply("010C", "BUS INIT: OK\r486B10410C1F40FF\r\r>", data("486B10410C1F40FF")), // memory
        // Texts that are not data.
        reply("010C", "NO DATA\r\r>", new Reply.NoData()),
        reply("010C", "SEARCHING...\rUNABLE TO CONNECT\r\r>", new Reply.NotConnected()), // memory
        reply(
            "010C", "BUS INIT: ...ERROR\r\r>", new Reply.BusFault("BUS INIT: ...ERROR")), // memory
        reply("010C", "ERROR\r\r>", new Reply.BusFault("ERROR")), // memory
        reply("010C", "CAN ERROR\r\r>", new Reply.BusFault("CAN ERROR")), // memory
        reply("010C", "BUS ERROR\r\r>", new Reply.BusFault("BUS ERROR")),
        reply("010C", "BUS BUSY\r\r>", new Reply.BusFault("BUS BUSY")),
        reply("010C", "FB ERROR\r\r>", new Reply.BusFault("FB ERROR")),
        reply("010C", RPM + "\rBUFFER FULL\r\r>", new Reply.Overflowed()),
        reply("010C", "DATA ERROR\r\r>", new Reply.Damaged()),
        reply("010C", RPM + "<DATA ERROR\r\r>", new Reply.Damaged()),
        reply("010C", RPM + " <RX ERROR\r\r>", new Reply.Damaged()),
        reply("010C", "STOPPED\r\r>", new Reply.Stopped()), // memory
        reply("0100", "SEARCHING...STOPPED\r\r>", new Reply.Stopped()), // memory
        reply("ATXY", "?\r\r>", new Reply.NotUnderstood()),
        reply("010C1", "?\r\r>", new Reply.NotUnderstood()),
        reply("010C", "LV RESET\r\r>", new Reply.Restarted("LV RESET")),
        reply("010C", "ERR94\r\r>", new Reply.Restarted("ERR94")),
        reply("010C", "SOME ADAPTER v1.0\r\r>", new Reply.Unexpected("SOME ADAPTER v1.0")),
        reply("010C", RPM + "\rSOME ADAPTER\r\r>", new Reply.Unexpected(RPM + " SOME ADAPTER")),
        reply("010C", "\r\r>", new Reply.Unexpected("")),
        // The adapter about itself.
        reply("ATE0", "ATE0\rOK\r\r>", new Reply.Accepted()),
        reply("ATE0", "OK\r\r>", new Reply.Accepted()),
        reply("ATZ", "\r\rSOME ADAPTER v1.0\r\r>", new Reply.Text("SOME ADAPTER v1.0")),
        reply("ATZ", "ATZ\r\r\rSOME ADAPTER\r\r>", new Reply.Text("SOME ADAPTER")),
        reply("ATRV", "13.8V\r\r>", new Reply.Text("13.8V")),
        reply("ATDPN", "A6\r\r>", new Reply.Text("A6")),
        reply("ATI", "\u00FE\u00FF\r>", new Reply.Unexpected("\uFFFD\uFFFD")));
  }

  private static Arguments reply(String command, String heard, Reply meaning) {
    return Arguments.of(command, heard, meaning);
  }

  private static Reply data(String... lines) {
    return new Reply.Data(List.of(lines));
  }

  @ParameterizedTest
  @MethodSource("replies")
  void everyReplyIsRecognisedHoweverItIsCut(String command, String heard, Reply meaning) {
    byte[] bytes = heard.getBytes(StandardCharsets.ISO_8859_1);
    for (int size = 1; size <= bytes.length; size++) {
      assertThat(inPieces(command, bytes, size)).as("pieces of " + size).contains(meaning);
    }
  }

  private static Optional<Reply> inPieces(String command, byte[] bytes, int size) {
    Dialogue dialogue = new Dialogue();
    dialogue.begin(command);
    for (int at = 0; at < bytes.length; at += size) {
      Optional<Reply> reply =
          dialogue.accept(Arrays.copyOfRange(bytes, at, Math.min(at + size, bytes.length)));
      boolean isLast = at + size >= bytes.length;
      assertThat(reply.isPresent()).as("complete only with the prompt").isEqualTo(isLast);
      if (isLast) {
        return reply;
      }
    }
    return Optional.empty();
  }

  @Test
  void replyWithoutAPromptIsIncomplete() {
    Dialogue dialogue = new Dialogue();
    dialogue.begin("010C");

    assertThat(dialogue.accept(bytes(RPM + "\r\r"))).isEmpty();
    assertThat(dialogue.giveUp()).isEqualTo(new Reply.Silence(RPM));
  }

  @Test
  void whatWasLeftOverDoesNotReachTheNextCommand() {
    Dialogue dialogue = new Dialogue();
    dialogue.begin("010C");
    assertThat(dialogue.accept(bytes("7E804"))).isEmpty();

    dialogue.begin("010D");

    assertThat(dialogue.accept(bytes("7E803410D50AAAAAAAA\r\r>")))
        .contains(data("7E803410D50AAAAAAAA"));
  }

  // A port at a wrong rate, or a device that is no adapter, may send for ever without a prompt.
  @Test
  void endlessBabbleEndsTheReply() {
    Dialogue dialogue = new Dialogue();
    dialogue.begin("ATI");
    Optional<Reply> reply = Optional.empty();
    for (int i = 0; i < 100 && reply.isEmpty(); i++) {
      reply = dialogue.accept(new byte[1000]);
      reply = reply.or(() -> dialogue.accept(bytes("x".repeat(1000))));
    }

    assertThat(reply).containsInstanceOf(Reply.Unexpected.class);
  }

  @Test
  void restartBetweenRequestsIsNoticedAndOtherLeftoversAreNot() {
    assertThat(Dialogue.uninvited(bytes("\r\rLV RESET\r\r>")))
        .contains(new Reply.Restarted("LV RESET"));
    assertThat(Dialogue.uninvited(bytes("ERR94\r\r>"))).isPresent();
    assertThat(Dialogue.uninvited(bytes(RPM + "\r\r>"))).isEmpty();
    assertThat(Dialogue.uninvited(bytes("ACT ALERT\r"))).isEmpty();
    assertThat(Dialogue.uninvited(new byte[0])).isEmpty();
  }

  @Test
  void randomBytesAlwaysEndInSomeReply() {
    long seed = 4711;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      byte[] noise = new byte[random.nextInt(40) + 1];
      random.nextBytes(noise);
      noise[noise.length - 1] = '>';
      Dialogue dialogue = new Dialogue();
      dialogue.begin(random.nextBoolean() ? "010C" : "ATI");

      assertThat(dialogue.accept(noise)).as("seed " + seed + ", round " + i).isPresent();
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
