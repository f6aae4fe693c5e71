package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A vehicle that stores a code on the way, as a terminal tells it. */
@Execution(ExecutionMode.CONCURRENT)
class TroubleCodesToldTest {
  @TempDir private Path folder;

  @Test
  void recordTellsEachCodeOnceWithWhatWasMeasuredAndAdviseRepeatsTheNotice() throws Exception {
    Desk desk = new Desk(folder.resolve("library"));
    Desk.Answer recorded =
        desk.type(
            "record",
            "--port",
            "demo:cool-day?speed=max&codes=P0299@70",
            "--vehicle",
            "Wattle 2",
            "--for",
            "150s");

    assertThat(recorded.status()).as(recorded.err()).isZero();
    assertThat(recorded.err().lines().filter(line -> line.contains("no trouble code is stored")))
        .hasSize(1);
    assertThat(
            recorded
                .err()
                .lines()
                .filter(
                    line ->
                        line.contains(
                            "new trouble code P0299, turbocharger A underboost (stored, control"
                                + " unit 7E8): have a workshop look at it")))
        .hasSize(1);
    assertThat(recorded.err()).contains("measured when P0299 was stored (control unit 7E8): ");

    List<JsonNode> advised = new ArrayList<>();
    for (String line : desk.type("advise", recorded.out().strip()).lines()) {
      advised.add(new ObjectMapper().readTree(line));
    }
    assertThat(advised)
        .anySatisfy(
            line -> {
              assertThat(line.path("rule").asText()).isEqualTo("new-trouble-code");
              assertThat(line.path("level").asText()).isEqualTo("notice");
            });
    assertThat(ToldAdvice.replayed(advised)).isEqualTo(ToldAdvice.live(recorded.err()));
  }
}
