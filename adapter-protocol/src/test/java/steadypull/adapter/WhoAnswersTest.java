package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import steadypull.adapter.frame.Payload;

/**
 * Order of the bits in support maps: SAE J1979, service sheet, section 3, whose first example is 41
 * 00 98 3B A0 13: 01 04 05 0B 0C 0D 0F 10 11 13 1C 1F 20.
 */
class WhoAnswersTest {
  private final WhoAnswers who = new WhoAnswers();

  @Test
  void thoseWhoSupportAnyParameterAnswer() {
    learn("01 00", "7E8", "41 00 98 3B A0 13");
    learn("01 00", "7E9", "41 00 00 18 00 01"); // 0C 0D 20
    learn("01 40", "7E8", "41 40 04 00 00 00"); // 46

    assertThat(who.to(hex("01 05"))).containsExactly("7E8");
    assertThat(who.to(hex("01 0C"))).containsExactlyInAnyOrder("7E8", "7E9");
    assertThat(who.to(hex("01 05 0D"))).containsExactlyInAnyOrder("7E8", "7E9");
    assertThat(who.to(hex("01 46"))).containsExactly("7E8");
    assertThat(who.to(hex("01 02"))).isEmpty();
  }

  @Test
  void mapsBehindIdentifiersTellTheSame() {
    learn("22 F4 00", "7E8", "62 F4 00 98 3B A0 13");

    assertThat(who.to(hex("22 F4 05"))).containsExactly("7E8");
    assertThat(who.to(hex("22 F4 02 F4 0C"))).containsExactly("7E8");
    assertThat(who.to(hex("22 F1 90"))).isEmpty();
    assertThat(who.to(hex("22 F4 05 1E 1C"))).isEmpty();
  }

  // Whoever wakes up late must be heard when the maps are asked for again.
  @Test
  void nobodyIsExpectedForMapsCodesAndWhatIsNotKnown() {
    learn("01 00", "7E8", "41 00 98 3B A0 13");

    for (String question : new String[] {"01 00", "01 20", "01 0C 20", "03", "07", "09 02"}) {
      assertThat(who.to(hex(question))).as(question).isEmpty();
    }
    who.clear();
    assertThat(who.to(hex("01 0C"))).isEmpty();
  }

  @Test
  void answersToOtherQuestionsAndRefusalsTeachNothing() {
    learn("01 00", "7E8", "7F 01 11");
    learn("01 00", "7E8", "41 20 98 3B A0 13");
    learn("01 00", "7E8", "41");
    learn("01 00", "7E8", "41 00 98 3B");
    learn("01 0C", "7E8", "41 0C 1F 40 00 00");

    assertThat(who.to(hex("01 0C"))).isEmpty();
    assertThat(who.to(hex("01 01"))).isEmpty();
  }

  private void learn(String question, String sender, String answer) {
    who.learn(hex(question), sender, hex(answer));
  }

  private static Payload hex(String text) {
    return Payload.ofHex(text);
  }
}
