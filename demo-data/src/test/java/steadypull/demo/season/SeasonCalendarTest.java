package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

class SeasonCalendarTest {
  /** What the vehicle file tells the program about the rig is what the rig is. */
  @Test
  void vehicleFilesTellTheTruthAboutTheirRigs() {
    for (FleetVehicle vehicle : Fleet.ALL) {
      Rig rig = vehicle.rig();
      assertThat(VehicleText.vehicle(vehicle))
          .contains("\"name\": \"" + vehicle.name() + "\"")
          .contains("\"mass_kg\": %.0f,".formatted(rig.of(RigTrait.MASS_KG)))
          .contains("\"tyre_radius_m\": %s".formatted(rig.of(RigTrait.TYRE_RADIUS_M)))
          .contains("\"gear_ratios\": " + rig.gearRatios())
          .contains(
              "\"charge_air_temp_out\", \"limit_degC\": %.0f,"
                  .formatted(rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC)));
    }
  }

  @Test
  void aTripWithoutItsTrailerIsLighterThanItsVehicleFile() {
    for (SeasonTrip trip : Season.of(1).trips()) {
      boolean tows = trip.fitted().contains("trailer");
      String moved = trip.rigFile();
      if (tows) {
        assertThat(trip.vehicleFile()).contains(moved);
      } else if (!trip.vehicleName().equals("Motorhome 5")) {
        assertThat(trip.vehicleFile()).doesNotContain(moved);
      }
    }
  }

  /** "Several": passes are worth comparing from three on, by two vehicles at least. */
  @Test
  void everyRoadIsDrivenSeveralTimesBothWaysBySeveralVehicles() {
    for (SeasonRoad road : SeasonRoad.ALL) {
      List<SeasonTrip> out = trips(road.key() + ">");
      assertThat(out).as(road.key()).hasSizeGreaterThanOrEqualTo(3);
      assertThat(trips(road.key() + "<")).as(road.key()).hasSizeGreaterThanOrEqualTo(3);
      assertThat(out.stream().map(SeasonTrip::vehicleName).distinct().count())
          .as(road.key())
          .isGreaterThanOrEqualTo(2);
    }
    assertThat(trips("ladder>").stream().map(SeasonTrip::vehicleName).distinct()).hasSize(4);
  }

  private static List<SeasonTrip> trips(String words) {
    return Season.of(1).trips().stream().filter(trip -> trip.toString().contains(words)).toList();
  }

  @Test
  void everyTripCanBeFoundByLabelsAndTags() {
    assertThat(Season.of(1).trips())
        .allSatisfy(
            trip -> {
              assertThat(trip.label()).isIn("", "baseline", "after");
              assertThat(trip.tags()).isNotEmpty().doesNotHaveDuplicates();
              assertThat(trip.outsideCelsius()).isPresent();
            });
  }
}
