package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReconnectLadder.Rung;

class ReconnectLadderTest {
  private final ReconnectLadder ladder = new ReconnectLadder();
  private final Trouble quiet = new Trouble.VehicleQuiet(SilenceCause.NO_ANSWER, "\"NO DATA\"");
  private final Trouble confused = new Trouble.AdapterConfused("\"WHAT\"");

  @Test
  void quietVehicleClimbsToAFullResetButNeverReopensAHealthyAdapter() {
    List<Rung> rungs = Stream.generate(() -> ladder.next(quiet)).limit(8).toList();

    assertThat(rungs)
        .startsWith(Rung.SEARCH_AGAIN, Rung.CLOSE_PROTOCOL, Rung.WARM_START, Rung.FULL_RESET)
        .doesNotContain(Rung.REOPEN);
  }

  @Test
  void confusedAdapterIsStartedWarmThenResetThenReopened() {
    assertThat(Stream.generate(() -> ladder.next(confused)).limit(3))
        .containsExactly(Rung.WARM_START, Rung.FULL_RESET, Rung.REOPEN);
  }

  @Test
  void everythingStartsFromTheBottomAfterAConnection() {
    ladder.next(quiet);
    ladder.next(confused);
    ladder.nextBackOffSeconds();
    ladder.nextBackOffSeconds();

    ladder.connected();

    assertThat(ladder.next(quiet)).isEqualTo(Rung.SEARCH_AGAIN);
    assertThat(ladder.next(confused)).isEqualTo(Rung.WARM_START);
    assertThat(ladder.nextBackOffSeconds()).isEqualTo(1);
  }

  @Test
  void backOffGrowsToTenSeconds() {
    assertThat(Stream.generate(ladder::nextBackOffSeconds).limit(6))
        .containsExactly(1, 2, 5, 10, 10, 10);
  }
}
