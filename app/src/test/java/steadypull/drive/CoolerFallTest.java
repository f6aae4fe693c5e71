package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/** What a drive that sets out knows of coolers that clog. */
class CoolerFallTest {
  private static final HeatQuantity CONDUCTANCE =
      new HeatQuantity(
          "charge_coolant.conductance_W_per_K", Circuit.CHARGE_AIR, true, Math.log(300), 0.8);
  private static final Instant FIRST = Instant.parse("2026-05-01T08:00:00Z");
  private static final Instant AFTER = FIRST.plus(Duration.ofDays(365));
  private static final Vehicle VEHICLE = Vehicle.unknown("rig", CoolingLayout.WATER_TO_AIR);

  /** Fourteen trips every nine days, each a little worse, down to what is left. */
  private static List<LessonOfTrip> season(double left) {
    return IntStream.range(0, 14)
        .mapToObj(
            trip ->
                new LessonOfTrip(
                    FIRST.plus(Duration.ofDays(9L * trip)),
                    new TripHeat(
                        0.8,
                        List.of(
                            new HeatTold(
                                CONDUCTANCE, Math.log(500 * Math.pow(left, trip / 13.0)), 0.04)),
                        List.of())))
        .toList();
  }

  @Test
  void aSureFallIsToldInPercent() {
    assertThat(CoolerFall.percent(season(0.78), VEHICLE, AFTER)).isCloseTo(22, within(0.1));
  }

  @Test
  void aFallOfAFewPercentIsNone() {
    assertThat(CoolerFall.percent(season(0.94), VEHICLE, AFTER)).isZero();
  }

  /** A replay of an early trip does not know what later ones have told. */
  @Test
  void tripsThatBeganLaterDoNotCount() {
    assertThat(CoolerFall.percent(season(0.78), VEHICLE, FIRST.plus(Duration.ofDays(20)))).isZero();
  }

  @Test
  void whatWasFittedSinceBeginsAnew() {
    Configuration fitted =
        new Configuration(
            "second radiator",
            FIRST.plus(Duration.ofDays(115)),
            Set.of(Circuit.CHARGE_AIR),
            LearntHeat.NOTHING);
    Vehicle changed = VEHICLE.withConfigurations(List.of(Configuration.FIRST, fitted));
    assertThat(CoolerFall.percent(season(0.78), changed, AFTER)).isZero();
  }
}
