package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Fifty worlds whose driver follows the advice, with the table of the guide. */
@Tag("bench")
class FollowedAdviceBenchTest {
  @Test
  void followedAdvicePreventsNineDeratesInTenThatAnyActionPrevents() {
    FollowedTable table = new FollowedTable();
    for (int number = 61; number <= 110; number++) {
      table.add(FollowedWorld.of(number, Duration.ofHours(1)));
    }
    System.out.print(table);
    assertThat(table.prevented())
        .isGreaterThanOrEqualTo((int) Math.ceil(0.9 * table.preventable()));
    assertThat(table.toldApart()).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * table.notBySpeed()));
  }
}
