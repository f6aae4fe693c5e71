package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.adapter.dialogue.Dialogue;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.FrameReader;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;

/** Replies read on their bytes mean what they mean when they are read as text. */
class PlainReplyTest {
  private static final String RPM = "7E804410C1F40AAAAAA";
  private static final Message MEANING = new Message("7E8", Payload.ofHex("410C1F40"));

  private final MessageBuffer messages = new MessageBuffer();
  private final FrameReader reader = new FrameReader(messages);
  private final Dialogue dialogue = new Dialogue();

  private boolean isPlain(String command, String heard) {
    dialogue.begin(command);
    byte[] bytes = heard.getBytes(StandardCharsets.ISO_8859_1);
    assertThat(dialogue.accept(bytes, bytes.length)).isTrue();
    reader.begin(MessageFormat.CAN_11_BIT);
    return reader.readPlain(dialogue.heard(), dialogue.length(), dialogue.line());
  }

  @Test
  void dataAreReadOnTheirBytesHoweverTheAdapterPrintsThem() {
    for (String heard :
        List.of(
            RPM + "\r\r>",
            "7E8 04 41 0C 1F 40 AA AA AA \r\r>",
            "7E8 04 41 0C 1F 40 AA AA AA \r\n\r\n>",
            RPM.toLowerCase(Locale.ROOT) + "\r\r>",
            "\u0000" + RPM + "\r\u0000\r>",
            "010C\r" + RPM + "\r\r>",
            "01 0c\r" + RPM + "\r\r>")) {
      assertThat(isPlain("010C", heard)).as(heard).isTrue();
      assertThat(messages.messages()).as(heard).containsExactly(MEANING);
    }
  }

  @Test
  void everythingElseIsLeftToTheText() {
    for (String heard :
        List.of(
            "NO DATA\r\r>",
            "\r\r>",
            ">",
            "010C\r\r>",
            "SEARCHING..." + RPM + "\r\r>",
            RPM + "\rBUFFER FULL\r\r>",
            RPM + "<DATA ERROR\r\r>",
            RPM + "\rSTOPPED\r\r>",
            RPM + "\u00E9\r\r>")) {
      assertThat(isPlain("010C", heard)).as(heard).isFalse();
      assertThat(messages.count()).as(heard).isZero();
    }
  }

  // Frames, texts and noise glued at random: the quick way may give up, but never differ.
  @Test
  void quickWayNeverDiffersFromTheSlowOne() {
    long seed = 815;
    Random random = new Random(seed);
    String[] parts = {
      RPM,
      "7E8100B417807170C12",
      "7E8215C0FA00000AAAA",
      "7E9037F0112AAAAAAAA",
      "\r",
      "\r",
      "\r\n",
      " ",
      "010C",
      "NO DATA",
      "SEARCHING...",
      "AA",
      "F",
      "\u0000",
      "<DATA ERROR",
      "STOPPED",
      "x"
    };
    int plain = 0;
    for (int round = 0; round < 50_000; round++) {
      StringBuilder heard = new StringBuilder();
      for (int i = random.nextInt(8); i >= 0; i--) {
        heard.append(parts[random.nextInt(random.nextInt(4) == 0 ? parts.length : 9)]);
      }
      if (isPlain("010C", heard + ">")) {
        plain++;
        List<Message> quick = messages.messages();
        assertThat(dialogue.reply())
            .as("seed %d, round %d, %s", seed, round, heard)
            .isInstanceOfSatisfying(
                Reply.Data.class,
                data ->
                    assertThat(MessageFormat.CAN_11_BIT.messages(data.lines())).isEqualTo(quick));
      }
    }
    assertThat(plain).as("seed %d must reach plain replies", seed).isGreaterThan(5_000);
  }

  @Test
  void randomBytesNeverThrow() {
    long seed = 66;
    Random random = new Random(seed);
    for (int round = 0; round < 50_000; round++) {
      byte[] noise = new byte[random.nextInt(60)];
      random.nextBytes(noise);
      for (MessageFormat format : MessageFormat.values()) {
        reader.begin(format);
        reader.readPlain(noise, noise.length, new byte[] {'0', '1', '\r'});
      }
    }
    reader.begin(MessageFormat.CAN_11_BIT);
    reader.readLine(RPM);
    assertThat(messages.messages()).containsExactly(MEANING);
  }
}
