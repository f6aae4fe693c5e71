package steadypull.demo.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Sensor;

class ScenariosTest {
  private static final double CLIMB_BEGINS_METRES = 6500;

  @Test
  void longHotGradeDeratesThreeToFiveMinutesIntoTheClimb() {
    for (long seed = 1; seed <= 3; seed++) {
      List<PlantState> truth = truth("long-hot-grade", seed);
      double climb = firstTime(truth, CLIMB_BEGINS_METRES);
      double derate = firstDerate(truth).orElseThrow();

      assertThat(climb).as("a forecast has time to learn").isBetween(240.0, 330.0);
      assertThat(derate - climb).as("seed %d", seed).isBetween(180.0, 300.0);
      assertThat(truth.getLast().isDerated()).as("it recovers behind the crest").isFalse();
    }
  }

  @Test
  void chargeAirLeadsOnTheHotGrade() {
    List<PlantState> truth = truth("long-hot-grade", 1);

    assertThat(peak(truth, at -> at.temperatures().chargeAirOut())).isBetween(105.0, 112.0);
    assertThat(peak(truth, at -> at.temperatures().engineCoolant())).isBetween(96.0, 110.0);
    assertThat(peak(truth, at -> at.temperatures().engineOil())).isLessThan(125);
    assertThat(peak(truth, at -> at.temperatures().gearboxFluid())).isBetween(85.0, 115.0);
  }

  @Test
  void coolDayStaysFarFromEveryLimit() {
    List<PlantState> truth = truth("cool-day", 1);

    assertThat(firstDerate(truth)).isEmpty();
    assertThat(peak(truth, at -> at.temperatures().chargeAirOut())).isLessThan(105 - 15);
    assertThat(peak(truth, at -> at.temperatures().chargeCoolant())).isLessThan(100 - 15);
    assertThat(peak(truth, at -> at.temperatures().engineCoolant())).isLessThan(112 - 15);
    assertThat(peak(truth, at -> at.temperatures().engineOil())).isLessThan(130 - 15);
  }

  /**
   * Readings of one dynamometer pull at 380 to 400 N.m held, roughly 25 s apart (common practice,
   * no source). "Roughly" and a reading that is missing make the tolerances wide: 6 K for the slow
   * circuits, 15 K for the air.
   */
  @Test
  void dynamometerPullResemblesOneSeenInTheTrade() {
    Drive drive = new Drive(named("dyno-pull"), 1);
    double[] chargeCoolant = {68, 71, 92, 104, 113};
    double[] engineCoolant = {81, 86, 90, 94, 96};
    double[] chargeAirIn = {140, Double.NaN, 164, 180, 175};

    for (int i = 0; i < 5; i++) {
      drive.advanceTo(40 + 25 * i);
      PlantState.Temperatures hot = drive.state().temperatures();
      assertThat(hot.chargeCoolant()).as("reading %d", i).isCloseTo(chargeCoolant[i], within(6.0));
      assertThat(hot.engineCoolant()).as("reading %d", i).isCloseTo(engineCoolant[i], within(6.0));
      if (!Double.isNaN(chargeAirIn[i])) {
        assertThat(hot.chargeAirIn()).as("reading %d", i).isCloseTo(chargeAirIn[i], within(15.0));
      }
    }
    assertThat(firstDerate(truth("dyno-pull", 1)).orElseThrow())
        .as("torque begins to fall at the fourth reading")
        .isBetween(105.0, 128.0);
  }

  @Test
  void airNeverLeavesTheCoolerColderThanTheWaterThatEnters() {
    for (String name : List.of("long-hot-grade", "cool-day", "dyno-pull")) {
      for (PlantState at : truth(name, 2)) {
        PlantState.Temperatures hot = at.temperatures();
        if (hot.chargeAirIn() >= hot.chargeCoolant()) {
          assertThat(hot.chargeAirOut()).isGreaterThanOrEqualTo(hot.chargeCoolant() - 0.1);
        }
      }
    }
  }

  @Test
  void sameSeedGivesTheSameDriveAndAnotherSeedAnother() {
    assertThat(sensed(7)).isEqualTo(sensed(7)).isNotEqualTo(sensed(8));
  }

  @Test
  void everyScenarioHasAVehicleFileOfItsOwnVehicle() {
    for (Scenario scenario : DemoWorld.scenarios()) {
      assertThat(DemoWorld.vehicleFile(scenario))
          .contains("\"name\": \"" + scenario.vehicleName() + "\"");
    }
  }

  private static List<Double> sensed(long seed) {
    Drive drive = new Drive(named("long-hot-grade"), seed);
    List<Double> values = new ArrayList<>();
    for (int second = 1; second <= 60; second++) {
      drive.advanceTo(second);
      for (Sensor sensor : Sensor.values()) {
        values.add(drive.read(sensor));
      }
    }
    return values;
  }

  private static Scenario named(String name) {
    return DemoWorld.scenario(name).orElseThrow();
  }

  private static List<PlantState> truth(String name, long seed) {
    Scenario scenario = named(name);
    Drive drive = new Drive(scenario, seed);
    List<PlantState> truth = new ArrayList<>();
    for (int second = 1; second <= scenario.duration().toSeconds(); second++) {
      drive.advanceTo(second);
      truth.add(drive.state());
    }
    return truth;
  }

  private static double firstTime(List<PlantState> truth, double metres) {
    return truth.stream()
        .filter(at -> at.motion().distance() >= metres)
        .findFirst()
        .orElseThrow()
        .seconds();
  }

  private static OptionalDouble firstDerate(List<PlantState> truth) {
    return truth.stream()
        .filter(PlantState::isDerated)
        .mapToDouble(PlantState::seconds)
        .findFirst();
  }

  private static double peak(List<PlantState> truth, ToDoubleFunction<PlantState> what) {
    return truth.stream().mapToDouble(what).max().orElseThrow();
  }
}
