package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.adapter.diagnostic.CurrentDataReader.Kind;
import steadypull.adapter.frame.Payload;

/** Message shapes: SAE J1979 (ISO 15031-5) service 01, ISO 14229-1 negative responses. */
class CurrentDataReaderTest {
  private final CurrentDataReader reader = new CurrentDataReader();
  private final int[] lengths = new int[0x100];

  CurrentDataReaderTest() {
    for (int number : List.of(0x04, 0x05, 0x0B, 0x0D, 0x0F)) {
      lengths[number] = 1;
    }
    lengths[0x0C] = 2;
  }

  private Kind read(List<Integer> asked, String hex) {
    return reader.read(asked, lengths, Payload.ofHex(hex));
  }

  /** What was found: number and data in hex, in the order of the message. */
  private List<String> found(String hex) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < reader.count(); i++) {
      Payload data = Payload.ofHex(hex).slice(reader.start(i), reader.end(i));
      found.add("%02X=%s".formatted(reader.number(i), data));
    }
    return found;
  }

  @Test
  void severalParametersAreTakenApartInAnyOrder() {
    String hex = "41 0C 1F 40 04 7F 05 82 0B C8 0D 50 0F 4B";

    assertThat(read(List.of(0x04, 0x05, 0x0B, 0x0C, 0x0D, 0x0F), hex)).isEqualTo(Kind.DATA);
    assertThat(found(hex)).containsExactly("0C=1F40", "04=7F", "05=82", "0B=C8", "0D=50", "0F=4B");
    assertThat(reader.position(0)).as("0C was asked as the fourth").isEqualTo(3);
    assertThat(reader.position(1)).isZero();
  }

  @Test
  void parametersThatAreMissingFromTheAnswerAreNotInvented() {
    assertThat(read(List.of(0x04, 0x05), "41 05 82")).isEqualTo(Kind.DATA);
    assertThat(found("41 05 82")).containsExactly("05=82");
    assertThat(reader.position(0)).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({
    "41 04 7F 0D 50", // a parameter that was not asked, mixed with one that was
    "41 04 7F 99 50", // a parameter of unknown length
    "41 04 7F 0C 1F", // the last one is cut short
    "41 04 7F 04 7F", // the same twice
    "41 04 7F 05 82 0B C8 0C 1F 40 0D 50 0F 4B 99", // more than one request can ask for
    "41" // nothing at all
  })
  void answerThatDoesNotFitIsDiscardedWhole(String hex) {
    assertThat(read(List.of(0x04, 0x05, 0x0C), hex)).isEqualTo(Kind.MISFIT);
  }

  // An answer that came after the adapter's own time-out appears in the next reply.
  @Test
  void lateAnswerToAnotherRequestIsAStray() {
    assertThat(read(List.of(0x04, 0x05), "41 0C 1F 40 0D 50")).isEqualTo(Kind.STRAY);
    assertThat(read(List.of(0x05), "41 0D 50")).isEqualTo(Kind.STRAY);
    assertThat(read(List.of(0x05), "7F 22 31")).isEqualTo(Kind.STRAY);
    assertThat(read(List.of(0x05), "62 05 82")).isEqualTo(Kind.STRAY);
  }

  @Test
  void oneParameterIsAsLongAsItComes() {
    assertThat(read(List.of(0x68), "41 68 03 43 5A")).isEqualTo(Kind.DATA);
    assertThat(found("41 68 03 43 5A")).containsExactly("68=03435A");
    assertThat(read(List.of(0x68), "41 68")).isEqualTo(Kind.STRAY);
  }

  @Test
  void refusalTellsItsReason() {
    assertThat(read(List.of(0x04, 0x05), "7F 01 13")).isEqualTo(Kind.REFUSED);
    assertThat(reader.code()).isEqualTo(NegativeCode.TOO_MUCH);
    assertThat(read(List.of(0x04), "7F 01 21")).isEqualTo(Kind.REFUSED);
    assertThat(reader.code()).isEqualTo(NegativeCode.BUSY);
  }

  // A damaged byte may turn numbers and lengths into anything; then nothing is taken, or what is
  // taken lies within the message, was asked for and is as long as was learnt.
  @Test
  void damagedAnswersNeverGiveWhatWasNotAskedNorRunOverTheEnd() {
    long seed = 2_718;
    Random random = new Random(seed);
    List<Integer> asked = List.of(0x04, 0x05, 0x0C);
    byte[] sound = Payload.ofHex("41 04 7F 05 82 0C 1F 40").toBytes();
    for (int round = 0; round < 50_000; round++) {
      byte[] damaged = Arrays.copyOf(sound, 1 + random.nextInt(sound.length));
      damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      if (reader.read(asked, lengths, Payload.of(damaged)) == Kind.DATA) {
        for (int i = 0; i < reader.count(); i++) {
          assertThat(asked).as("seed %d, round %d", seed, round).contains(reader.number(i));
          assertThat(reader.end(i) - reader.start(i)).isEqualTo(lengths[reader.number(i)]);
          assertThat(reader.end(i)).isLessThanOrEqualTo(damaged.length);
        }
      }
    }
  }
}
