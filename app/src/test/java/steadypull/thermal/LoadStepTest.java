package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class LoadStepTest {
  private final LoadStep load = new LoadStep();
  private int second;

  @Test
  void theFootOfAGradeIsAStep() {
    assertThat(steps(120, _ -> 70)).isZero();
    assertThat(steps(30, _ -> 200)).isPositive();
  }

  @Test
  void theTopOfAGradeIsAStep() {
    steps(120, _ -> 200);
    assertThat(steps(30, _ -> 40)).isPositive();
  }

  @Test
  void aSlowDriftIsNone() {
    steps(60, _ -> 170);
    assertThat(steps(200, s -> 170 + 0.2 * s)).isZero();
  }

  @Test
  void aGearChangeIsNone() {
    steps(120, _ -> 180);
    assertThat(steps(2, _ -> 0) + steps(30, _ -> 180)).isZero();
  }

  private int steps(int seconds, DoubleUnaryOperator kilowatts) {
    int steps = 0;
    for (int each = 0; each < seconds; each++) {
      steps += load.accept(second++, kilowatts.applyAsDouble(each)) ? 1 : 0;
    }
    return steps;
  }
}
