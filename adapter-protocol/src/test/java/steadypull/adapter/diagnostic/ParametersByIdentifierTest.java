package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.adapter.frame.Payload;

/**
 * Service 22 and its answer: ISO 14229-1. That F400 to F4FF carry service 01 and F800 to F8FF
 * service 09: SAE J1979-2, from memory, not verified (service sheet, section 1). Data of the worked
 * decodes of the service sheet, section 6c.
 */
class ParametersByIdentifierTest {
  private final ParametersByIdentifier parameters = new ParametersByIdentifier();

  @Test
  void questionsAreTurnedIntoIdentifiers() {
    assertThat(parameters.questions(hex("01 0C"))).containsExactly(hex("22 F4 0C"));
    assertThat(parameters.questions(hex("01 0C 0D 05")))
        .containsExactly(hex("22 F4 0C F4 0D F4 05"));
    assertThat(parameters.questions(hex("09 0A"))).containsExactly(hex("22 F8 0A"));
    assertThat(parameters.questions(hex("22 1E 1C"))).containsExactly(hex("22 1E 1C"));
  }

  // F190: ISO 14229-1, annex C.
  @Test
  void identificationNumberHasTwoIdentifiers() {
    assertThat(parameters.questions(hex("09 02")))
        .containsExactly(hex("22 F8 02"), hex("22 F1 90"));
    assertThat(answer("09 02", "62 F1 90" + "41".repeat(17)))
        .isEqualTo(hex("49 02 01" + "41".repeat(17)));
    assertThat(answer("09 04", "62 F1 90" + "41".repeat(17)))
        .isEqualTo(hex("62 F1 90" + "41".repeat(17)));
  }

  // Their counterparts are other services than 22, which the gate does not know.
  @Test
  void codesAndFreezeFramesHaveNoQuestion() {
    for (String question : new String[] {"03", "07", "0A", "02 05 00"}) {
      assertThat(parameters.questions(hex(question))).as(question).isEmpty();
    }
  }

  @Test
  void answersAreTurnedBack() {
    assertThat(answer("01 0C", "62 F4 0C 1F 40")).isEqualTo(hex("41 0C 1F 40"));
    assertThat(answer("01 78", "62 F4 78 07 17 0C 12 5C 0F A0 00 00"))
        .isEqualTo(hex("41 78 07 17 0C 12 5C 0F A0 00 00"));
    assertThat(answer("01 0C", "7F 22 31")).isEqualTo(hex("7F 01 31"));
    assertThat(answer("09 02", "7F 22 31")).isEqualTo(hex("7F 09 31"));
  }

  @Test
  void severalAnswersAreCutByTheLengthsThatWereLearnt() {
    answer("01 0C", "62 F4 0C 1F 40");
    answer("01 05", "62 F4 05 82");
    answer("01 77", "62 F4 77 03 7A 5C 00 00");

    assertThat(parameters.isLearnt(hex("01 0C 05 77"))).isTrue();
    assertThat(answer("01 0C 05 77", "62 F4 05 83 F4 77 03 7A 5C 00 00 F4 0C 1F 44"))
        .isEqualTo(hex("41 05 83 77 03 7A 5C 00 00 0C 1F 44"));
    assertThat(answer("01 0C 05 77", "62 F4 0C 1F 40")).isEqualTo(hex("41 0C 1F 40"));
  }

  @Test
  void lengthsAreEachSendersOwn() {
    parameters.answer(hex("01 0C"), "7E9", hex("62 F4 0C 1F"));
    answer("01 0C", "62 F4 0C 1F 40");
    answer("01 05", "62 F4 05 82");

    assertThat(answer("01 0C 05", "62 F4 0C 1F 40 F4 05 82")).isEqualTo(hex("41 0C 1F 40 05 82"));
    assertThat(parameters.isLearnt(hex("01 0C 0D"))).isFalse();
  }

  // What cannot be taken apart must not be taken for a reading: it ends before its first byte.
  @Test
  void misfitStaysAMisfit() {
    int[] lengths = new int[0x100];
    lengths[0x0C] = 2;
    lengths[0x05] = 1;
    answer("01 0C", "62 F4 0C 1F 40");
    answer("01 05", "62 F4 05 82");
    for (String message :
        new String[] {
          "62 F4 0C 1F F4 05 82", // shorter than learnt
          "62 F4 0C 1F 40 00 F4 05 82", // longer
          "62 F4 0C 1F 40 F4 0D 50", // not asked for
          "62 F4 0C 1F 40 F5 05 82", // another block
          "62 F4 0C 1F 40 F4", // cut
          "62"
        }) {
      Payload turned = answer("01 0C 05", message);
      assertThat(turned).as(message).isEqualTo(hex("41 0C"));
      assertThat(new CurrentDataReader().read(List.of(0x0C, 0x05), lengths, turned))
          .as(message)
          .isEqualTo(CurrentDataReader.Kind.MISFIT);
    }
  }

  @Test
  void answersToOtherQuestionsStayWhatTheyAre() {
    for (String message :
        new String[] {"41 0C 1F 40", "7F 01 11", "7F 22 31 00", "50 03", "62 1E 1C 06 40"}) {
      assertThat(answer("22 1E 1C", message)).as(message).isEqualTo(hex(message));
    }
    assertThat(answer("22 1E 1C", "7F 22 31")).isEqualTo(hex("7F 22 31"));
  }

  @Test
  void identificationGetsTheCountOfItems() {
    assertThat(
            answer("09 02", "62 F8 02 31 5A 5A 54 50 39 41 47 31 52 30 30 30 30 30 34 32")
                .toString())
        .isEqualTo("490201315A5A5450394147315230303030303432");
    assertThat(answer("09 00", "62 F8 00 55 40 00 00")).isEqualTo(hex("49 00 55 40 00 00"));
    assertThat(answer("09 04", "62 F8 04" + "41".repeat(32)))
        .isEqualTo(hex("49 04 02" + "41".repeat(32)));
    assertThat(answer("09 06", "62 F8 06 11 22 33 44")).isEqualTo(hex("49 06 01 11 22 33 44"));
  }

  @Test
  void randomAnswersNeverThrowAndNeverGrowBeyondWhatCame() {
    long seed = 4;
    Random random = new Random(seed);
    answer("01 0C", "62 F4 0C 1F 40");
    answer("01 05", "62 F4 05 82");
    for (int round = 0; round < 50_000; round++) {
      byte[] message = hex("62 F4 0C 1F 40 F4 05 82").toBytes();
      for (int flips = random.nextInt(3); flips >= 0; flips--) {
        message[random.nextInt(message.length)] = (byte) random.nextInt(256);
      }
      Payload came = Payload.of(message).slice(0, random.nextInt(message.length + 1));
      Payload turned = parameters.answer(hex("01 0C 05"), "7E8", came);
      assertThat(turned.size())
          .as("seed %d, round %d, %s", seed, round, came)
          .isLessThanOrEqualTo(Math.max(came.size(), 2));
    }
  }

  private Payload answer(String question, String message) {
    return parameters.answer(hex(question), "7E8", hex(message));
  }

  private static Payload hex(String text) {
    return Payload.ofHex(text);
  }
}
