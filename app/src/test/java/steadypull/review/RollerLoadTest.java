package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadypull.road.FlatGround;
import steadypull.road.climb.Climb;

class RollerLoadTest {
  private static final FlatGround GROUND = FlatGround.around(-41.5, -118);

  /** 60 m of rise say nothing to a barometer in whole kPa; the receiver's place says enough. */
  @Test
  void wheelsThatTurnWhileThePlaceStaysAreOnRollers() {
    Climb held = climb(60, 1000, 0.02);
    assertThat(RollerLoad.of(held, OptionalDouble.of(0))).isEqualTo(RollerLoad.Ground.ROLLERS);
  }

  /** Hairpins come near to where they began; no road climbs within fifty metres of one place. */
  @Test
  void hairpinsAreARoad() {
    Climb bends = climb(60, 1000, 0.12);
    assertThat(RollerLoad.of(bends, OptionalDouble.of(0))).isEqualTo(RollerLoad.Ground.ROAD);
  }

  /** 150 m are 1.64 kPa by ISO 2533: more than two readings in whole kPa may hide. */
  @Test
  void withoutAReceiverThePressureTellsHighClimbs() {
    assertThat(ground(150, 0)).isEqualTo(RollerLoad.Ground.ROLLERS);
    assertThat(ground(150, 2)).isEqualTo(RollerLoad.Ground.ROAD);
  }

  @Test
  void withoutAReceiverNobodyKnowsOfLowClimbs() {
    assertThat(ground(60, 0)).isEqualTo(RollerLoad.Ground.UNKNOWN);
    assertThat(ground(60, 1)).isEqualTo(RollerLoad.Ground.UNKNOWN);
    assertThat(RollerLoad.of(unplaced(150), OptionalDouble.empty()))
        .isEqualTo(RollerLoad.Ground.UNKNOWN);
  }

  private static RollerLoad.Ground ground(double rise, double fall) {
    return RollerLoad.of(unplaced(rise), OptionalDouble.of(fall));
  }

  private static Climb unplaced(double rise) {
    return climb(rise, List.of());
  }

  /** To and fro, the turning points so many of the wheels' metres apart. */
  private static Climb climb(double rise, int metres, double apartShare) {
    return climb(
        rise,
        IntStream.rangeClosed(0, metres / 20)
            .mapToObj(
                i ->
                    new Climb.Spot(
                        20.0 * i,
                        rise * 20 * i / metres,
                        GROUND.latitude(metres * apartShare * Math.sin(i / 8.0)),
                        GROUND.longitude(5 * Math.cos(i / 3.0))))
            .toList());
  }

  private static Climb climb(double rise, List<Climb.Spot> spots) {
    return new Climb(100, 200, 500, 1000, rise, 0.08, Climb.End.ROAD, Climb.End.ROAD, 0, spots);
  }
}
