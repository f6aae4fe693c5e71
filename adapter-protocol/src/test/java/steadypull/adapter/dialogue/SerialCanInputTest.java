package steadypull.adapter.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Lines as public descriptions of the serial CAN protocol give them: transport sheet, section 5.
 */
class SerialCanInputTest {
  private static final String ANSWER = "t7E8804410C1F40AAAAAA";

  @Test
  void everyKindOfLineIsToldApart() {
    assertThat(
            lines(
                "\r\u0007z\rZ\rV1013\rNA123\rF84\r"
                    + ANSWER
                    + "\rT18DAF1108037F0111AAAAAAAA\rt0FF0\rr1000\rR000001008\r"))
        .containsExactly(
            new SerialCanLine.Obeyed(),
            new SerialCanLine.Refused(),
            new SerialCanLine.Sent(),
            new SerialCanLine.Sent(),
            new SerialCanLine.Version("1013"),
            new SerialCanLine.SerialNumber("A123"),
            new SerialCanLine.Status(0x84),
            new SerialCanLine.Frame(false, 0x7E8, "04410C1F40AAAAAA"),
            new SerialCanLine.Frame(true, 0x18DAF110, "037F0111AAAAAAAA"),
            new SerialCanLine.Frame(false, 0x0FF, ""),
            new SerialCanLine.RemoteFrame(),
            new SerialCanLine.RemoteFrame());
  }

  @Test
  void statusTellsLostFramesFromFaultsOnTheBus() {
    assertThat(new SerialCanLine.Status(0x00).hasLostFrames()).isFalse();
    assertThat(new SerialCanLine.Status(0x00).hasBusFault()).isFalse();
    for (int lost : new int[] {0x01, 0x08}) {
      assertThat(new SerialCanLine.Status(lost).hasLostFrames()).isTrue();
      assertThat(new SerialCanLine.Status(lost).hasBusFault()).isFalse();
    }
    for (int fault : new int[] {0x04, 0x20, 0x80}) {
      assertThat(new SerialCanLine.Status(fault).hasBusFault()).isTrue();
      assertThat(new SerialCanLine.Status(fault).hasLostFrames()).isFalse();
    }
    // A full send queue and a lost arbitration are the business of a busy bus.
    assertThat(new SerialCanLine.Status(0x42).hasBusFault()).isFalse();
  }

  @Test
  void timeStampBehindEightBytesIsLeftOut() {
    assertThat(lines(ANSWER + "EA5F\r"))
        .containsExactly(new SerialCanLine.Frame(false, 0x7E8, "04410C1F40AAAAAA"));
  }

  // With a length digit damaged from 8 to 6 the last two bytes would pass for a time stamp.
  @Test
  void damagedLengthDigitIsNeverTakenForATimeStamp() {
    for (char digit : "01234567 9ABCDEF".replace(" ", "").toCharArray()) {
      assertThat(lines("t7E8" + digit + "04410C1F40AAAAAA\r"))
          .as("length " + digit)
          .hasOnlyElementsOfType(SerialCanLine.Unreadable.class);
      assertThat(lines("t7E8" + digit + "04410C1F40AAAAAA1234\r"))
          .as("length " + digit + " with time stamp")
          .hasOnlyElementsOfType(SerialCanLine.Unreadable.class);
    }
  }

  @Test
  void bellSpoilsTheLineBeforeIt() {
    assertThat(lines("t7E8804\u0007" + ANSWER + "\r"))
        .containsExactly(
            new SerialCanLine.Unreadable("t7E8804"),
            new SerialCanLine.Refused(),
            new SerialCanLine.Frame(false, 0x7E8, "04410C1F40AAAAAA"));
  }

  @Test
  void lineWithoutAnEndIsNeverKeptWhole() {
    SerialCanInput input = new SerialCanInput();
    for (int i = 0; i < 1000; i++) {
      assertThat(input.accept(bytes("1234567890"))).isEmpty();
    }

    assertThat(input.accept(bytes("\r")))
        .singleElement()
        .isInstanceOfSatisfying(
            SerialCanLine.Unreadable.class, line -> assertThat(line.text()).hasSizeLessThan(70));
    assertThat(input.accept(bytes(ANSWER + "\r")))
        .containsExactly(new SerialCanLine.Frame(false, 0x7E8, "04410C1F40AAAAAA"));
  }

  @Test
  void streamCutAnywhereGivesTheSameLines() {
    byte[] stream = bytes("\r\u0007z\rV1013\r" + ANSWER + "\rT18DAF1108037F0111AAAAAAAA\rF00\r");
    List<SerialCanLine> expected = new SerialCanInput().accept(stream);
    for (int first = 0; first <= stream.length; first++) {
      for (int second = first; second <= stream.length; second++) {
        SerialCanInput input = new SerialCanInput();
        List<SerialCanLine> lines = new ArrayList<>();
        lines.addAll(input.accept(Arrays.copyOfRange(stream, 0, first)));
        lines.addAll(input.accept(Arrays.copyOfRange(stream, first, second)));
        lines.addAll(input.accept(Arrays.copyOfRange(stream, second, stream.length)));
        assertThat(lines).as("cut at %d and %d", first, second).isEqualTo(expected);
      }
    }
  }

  @Test
  void frameThatLosesOrGainsAByteIsNotRead() {
    byte[] line = bytes(ANSWER + "\r");
    for (int at = 0; at < line.length; at++) {
      byte[] shorter = new byte[line.length - 1];
      System.arraycopy(line, 0, shorter, 0, at);
      System.arraycopy(line, at + 1, shorter, at, line.length - 1 - at);
      assertThat(new SerialCanInput().accept(shorter))
          .as("without byte " + at)
          .noneMatch(SerialCanLine.Frame.class::isInstance);
    }
    for (int at = 0; at < line.length; at++) {
      String longer = ANSWER.substring(0, at) + "0" + ANSWER.substring(at);
      assertThat(lines(longer + "\r"))
          .as("one more before byte " + at)
          .noneMatch(SerialCanLine.Frame.class::isInstance);
    }
  }

  @Test
  void randomCorruptionNeverThrowsAndFramesKeepTheirLength() {
    long seed = 5;
    Random random = new Random(seed);
    byte[] stream = bytes("z\r" + ANSWER + "\rT18DAF1108037F0111AAAAAAAA\r\u0007F00\r");
    for (int round = 0; round < 50_000; round++) {
      byte[] damaged = stream.clone();
      for (int flips = random.nextInt(4); flips >= 0; flips--) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      for (SerialCanLine line : new SerialCanInput().accept(damaged)) {
        if (line instanceof SerialCanLine.Frame(boolean isLong, int identifier, String data)) {
          assertThat(data).as("seed %d, round %d", seed, round).matches("([0-9A-F]{2}){0,8}");
          assertThat(identifier)
              .as("seed %d, round %d", seed, round)
              .isBetween(0, isLong ? 0x1FFFFFFF : 0x7FF);
        }
      }
    }
  }

  @Test
  void commandsAreWrittenAsTheProtocolHasThem() {
    assertThat(SerialCanCommand.frame(0x7DF, false, "02010C0000000000"))
        .isEqualTo("t7DF802010C0000000000");
    assertThat(SerialCanCommand.frame(0x18DB33F1, true, "02010C0000000000"))
        .isEqualTo("T18DB33F1802010C0000000000");
    assertThat(SerialCanCommand.bitRate(500)).isEqualTo("S6");
    assertThat(SerialCanCommand.bitRate(250)).isEqualTo("S5");
  }

  private static List<SerialCanLine> lines(String text) {
    return new SerialCanInput().accept(bytes(text));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
