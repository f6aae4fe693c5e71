package steadypull.adapter.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BareLinesTest {
  /** Reply shapes with headers off, from published data sheets; VIN invented. */
  private static final List<String> VIN =
      List.of("014", "0:490201315A5A", "1:54503941473152", "2:30303030303432");

  private static final String VIN_PAYLOAD = "490201315A5A5450394147315230303030303432";

  @Test
  void aShortAnswerIsItsLine() {
    assertThat(read(List.of("410C1F40"))).containsExactly("410C1F40");
  }

  @Test
  void aLongAnswerIsPutTogetherAndItsFillerCut() {
    assertThat(read(VIN)).containsExactly(VIN_PAYLOAD);
    assertThat(read(List.of("00B", "0:41780717" + "0C12", "1:5C0FA00000AAAA")))
        .containsExactly("417807170C125C0FA00000");
  }

  @Test
  void aLongAnswerWithALineMissingTwiceOrInDisorderIsLeftOut() {
    for (int line = 0; line < VIN.size(); line++) {
      List<String> missing = new ArrayList<>(VIN);
      missing.remove(line);
      List<String> twice = new ArrayList<>(VIN);
      twice.add(line, VIN.get(line));

      assertThat(read(missing)).as("without line %d", line).isEmpty();
      if (line > 0) {
        assertThat(read(twice)).as("line %d twice", line).isEmpty();
      }
    }
    assertThat(read(List.of(VIN.get(0), VIN.get(2), VIN.get(1), VIN.get(3)))).isEmpty();
  }

  // Two control units at once: their parts look alike, so none of it may be believed.
  @Test
  void mixedLongAnswersOfTwoControlUnitsAreLeftOut() {
    List<String> mixed = new ArrayList<>();
    VIN.forEach(line -> mixed.addAll(List.of(line, line)));

    assertThat(read(mixed)).isEmpty();
  }

  // Without a checksum a changed digit may pass; a changed length, number or kind of line may not.
  @Test
  void damagedLinesNeverMakeAnAnswerOfAnotherLength() {
    long seed = 20_260_101;
    Random random = new Random(seed);
    for (int round = 0; round < 5000; round++) {
      List<String> damaged = new ArrayList<>(VIN);
      int line = random.nextInt(damaged.size());
      char[] text = damaged.get(line).toCharArray();
      text[random.nextInt(text.length)] = (char) (' ' + random.nextInt(95));
      damaged.set(line, new String(text));

      assertThat(read(damaged))
          .as("seed %d, round %d: %s", seed, round, damaged)
          .allMatch(payload -> payload.length() <= VIN_PAYLOAD.length())
          .allMatch(payload -> payload.length() != 14 || !payload.startsWith("4902"));
    }
  }

  private static List<String> read(List<String> lines) {
    MessageBuffer messages = new MessageBuffer();
    BareLines.read(lines, "7E8", messages);
    return messages.messages().stream().map(message -> message.payload().toString()).toList();
  }
}
