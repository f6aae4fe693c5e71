package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** What a terminal shows of a long transfer, and that it can be ended. */
class TransferProgressTest {
  private final StringWriter terminal = new StringWriter();

  @Test
  void nothingIsShownWhereThereIsNoTerminal() {
    TransferProgress progress = new TransferProgress(new PrintWriter(terminal), false);
    assertThat(progress.watch("Reading a.csv", 100).goesOn(50)).isTrue();
    progress.finish();

    assertThat(terminal.toString()).isEmpty();
  }

  @Test
  void whoeverAsksItToStopStopsEveryTransfer() {
    TransferProgress progress = new TransferProgress(new PrintWriter(terminal), false);
    progress.stop();

    assertThat(progress.watch("Reading a.csv", 100).goesOn(50)).isFalse();
  }
}
