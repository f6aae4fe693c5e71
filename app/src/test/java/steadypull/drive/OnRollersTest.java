package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripDetails;

/** A workshop's fan must not be taken for the road's wind. */
class OnRollersTest {
  /** At 90 km/h for some seconds, with a place each second that moves so far. */
  private static boolean hasStayed(int seconds, double degreesASecond, boolean isLocated) {
    OnRollers rollers = new OnRollers();
    for (int second = 1; second <= seconds; second++) {
      long micros = second * 1_000_000L;
      rollers.accept(new Sample(Channels.VEHICLE_SPEED, micros, 90));
      if (isLocated) {
        rollers.accept(new Sample(Channels.LATITUDE, micros, -41 + second * degreesASecond));
        rollers.accept(new Sample(Channels.LONGITUDE, micros, -118));
      }
    }
    return rollers.hasStayed();
  }

  @Test
  void wheelsThatTurnWhileThePlaceStaysAreOnRollers() {
    assertThat(hasStayed(60, 1e-7, true)).isTrue();
    assertThat(hasStayed(60, 2e-4, true)).as("a road").isFalse();
    assertThat(hasStayed(20, 1e-7, true)).as("500 m are a car park").isFalse();
    assertThat(hasStayed(600, 0, false)).as("nobody can know").isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "dynamometer, true",
    "Dyno pulls with the new map, true",
    "auf dem Rollenprüfstand, true",
    "indoors, true",
    "dynamic climb, false",
    "the steamrollers were on the road, false"
  })
  void orSomebodySaysSo(String said, boolean isOnRollers) {
    assertThat(OnRollers.isSaid(TripDetails.NONE.withOutside(said))).isEqualTo(isOnRollers);
    assertThat(OnRollers.isSaid(TripDetails.NONE.withTags(List.of(said)))).isEqualTo(isOnRollers);
    assertThat(OnRollers.isSaid(TripDetails.ofLabel(said))).isEqualTo(isOnRollers);
    assertThat(OnRollers.isSaid(TripDetails.NONE.withNote("a note\n" + said)))
        .isEqualTo(isOnRollers);
  }
}
