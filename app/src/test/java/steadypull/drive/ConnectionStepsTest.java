package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The README and {@code ports --probe} must not tell two stories. */
class ConnectionStepsTest {

  @Test
  void theReadmeHasTheStepsInTheSameWordsAndOrder() throws Exception {
    String readme = Files.readString(Path.of("..", "README.md")).replaceAll("\\s+", " ");
    int before = readme.indexOf("#### If it does not work");

    for (ConnectionStep step : ConnectionStep.values()) {
      String words = "%d. **%s.** %s".formatted(step.number(), step.title(), step.remedy());
      assertThat(readme).contains(words);
      assertThat(readme.indexOf(words)).as(words).isGreaterThan(before);
      before = readme.indexOf(words);
    }
  }

  @Test
  void aStepThatFailsIsTheLastButOneLineAndSaysWhatToDo() {
    ConnectionWalk walk =
        new ConnectionWalk()
            .holds(ConnectionStep.PORT, "")
            .fails(ConnectionStep.ANSWER, "nothing came\u0007 back");

    assertThat(walk.lines())
        .containsExactly(
            "  ok  1  The port opens",
            "  --  2  Something answers: no: nothing came? back",
            "         " + ConnectionStep.ANSWER.remedy());
  }
}
