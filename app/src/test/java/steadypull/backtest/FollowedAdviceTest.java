package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Two of the worlds of {@link FollowedAdviceBenchTest}: one where advice helps, one where none can.
 */
@Execution(ExecutionMode.CONCURRENT)
class FollowedAdviceTest {
  private static final Duration BEGINNING = Duration.ofMinutes(24);

  @Test
  void whoFollowsTheAdviceKeepsThePowerThatOthersLose() {
    assertThat(FollowedWorld.of(85, BEGINNING).episodes())
        .isNotEmpty()
        .allSatisfy(
            episode -> {
              assertThat(episode.remedy()).isNotEqualTo(FollowedWorld.Remedy.NOTHING);
              assertThat(episode.isPrevented()).isTrue();
            });
  }

  /** What no speed holds is not eased about: a stop is advised, the least bad there is. */
  @Test
  void whereNothingHelpsAStopIsAdvised() {
    assertThat(FollowedWorld.of(72, BEGINNING).episodes())
        .isNotEmpty()
        .allSatisfy(
            episode -> {
              assertThat(episode.remedy()).isEqualTo(FollowedWorld.Remedy.NOTHING);
              assertThat(episode.isStopAdvised()).isTrue();
            });
  }
}
