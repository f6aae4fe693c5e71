package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class VehicleNumberHashTest {
  private static final String NUMBER = "STEADYPULLDEMO001";

  @Test
  void theSameNumberGivesTheSameHashAndAnotherAnother() {
    assertThat(VehicleNumberHash.of(NUMBER))
        .matches("[0-9a-f]{16}")
        .isEqualTo(VehicleNumberHash.of(" " + NUMBER + " "))
        .isNotEqualTo(VehicleNumberHash.of("STEADYPULLDEMO002"));
  }

  @Test
  void noNumberHasNoHash() {
    assertThat(VehicleNumberHash.of(" ")).isEmpty();
  }
}
