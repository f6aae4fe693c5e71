package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TurnsInTimeTest {
  /** Shown in second 8, driven between 4 and 5: the two seconds behind may have it. */
  @Test
  void aTurnIsPutWhereItWasDriven() {
    List<RoadSecond> dated = TurnsInTime.dated(seconds(8, 4.5));
    assertThat(dated).filteredOn(second -> second.turn().isPresent()).hasSize(2);
    assertThat(dated.get(5).turn()).isPresent();
    assertThat(dated.get(6).turn()).isPresent();
  }

  /** The filter that looks back finds out for itself what the grade is behind it. */
  @Test
  void whatTheGradeIsBehindItIsLeftOpen() {
    assertThat(TurnsInTime.dated(seconds(8, 4.5)))
        .noneMatch(second -> second.turn().filter(Turn::isOnTheSpot).isPresent());
  }

  @Test
  void aTurnBeforeTheFirstSecondIsPutThere() {
    assertThat(TurnsInTime.dated(seconds(1, -3)).getFirst().turn()).isPresent();
  }

  private static List<RoadSecond> seconds(int shown, double turned) {
    List<RoadSecond> seconds = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Optional<Turn> turn = i == shown ? Optional.of(new Turn(turned, true)) : Optional.empty();
      seconds.add(new RoadSecond(i, 8, Optional.empty(), OptionalDouble.empty(), turn));
    }
    return seconds;
  }
}
