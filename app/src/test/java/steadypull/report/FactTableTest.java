package steadypull.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** How facts of a trip stand on its page. */
class FactTableTest {
  private final FactTable facts = new FactTable();

  private int rows() {
    return facts.markup().toString().split("<tr", -1).length - 1;
  }

  @Test
  void shortFactsStandTwoAbreast() {
    facts.add("length", "0:39:13");
    facts.add("distance", "36.8 km");
    facts.add("mass", "7.6 t");

    assertThat(rows()).isEqualTo(2);
  }

  @Test
  void aLongNoteHasALineOfItsOwn() {
    facts.add("tags", "climb, hot");
    facts.add("note", "lost power before the top, and the trailer's brakes smelt");
    facts.add("gaps", "1");

    assertThat(rows()).isEqualTo(3);
  }

  @Test
  void whatIsNotKnownIsLeftOut() {
    facts.add("label", "");

    assertThat(rows()).isZero();
  }
}
