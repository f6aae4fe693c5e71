package steadypull.demo.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;

/** Worlds other than the three that come with the program. */
class WorldsTest {
  /** Any legal rig, however absurd, moves on with finite numbers. */
  @Test
  void everyLegalRigStaysFinite() {
    for (long seed = 1; seed <= 40; seed++) {
      Drive drive = new Drive(scenario("long-hot-grade").with(anyRig(seed)), seed);
      for (int second = 10; second <= 400; second += 10) {
        drive.advanceTo(second);
        for (Sensor sensor : Sensor.values()) {
          assertThat(drive.read(sensor)).as("%s, seed %d", sensor, seed).isFinite();
        }
      }
    }
  }

  /** Somebody who heeds advice goes slower than the scenario wishes, stops, and drives on. */
  @Test
  void whoHeedsAdviceGoesNoFasterStopsAndDrivesOn() {
    Drive drive = new Drive(scenario("cool-day"), 1);
    drive.advanceTo(100);
    double wished = drive.state().motion().speed();
    drive.goNoFasterThan(wished - 5);
    drive.advanceTo(160);
    assertThat(drive.state().motion().speed()).isCloseTo(wished - 5, within(0.5));
    drive.goNoFasterThan(0);
    drive.advanceTo(220);
    assertThat(drive.state().motion().speed()).isCloseTo(0, within(0.1));
    drive.goNoFasterThan(Drive.AS_FAST_AS_WISHED);
    drive.advanceTo(340);
    assertThat(drive.state().motion().speed()).isGreaterThan(wished - 2);
  }

  @Test
  void airCooledByOutsideAirFollowsItQuickly() {
    Scenario scenario = scenario("long-hot-grade");
    Rig airToAir = scenario.rig().cooledBy(Rig.Cooling.AIR_TO_AIR);
    Drive water = new Drive(scenario, 1);
    Drive air = new Drive(scenario.with(airToAir), 1);
    water.advanceTo(440);
    air.advanceTo(440);
    double before = air.state().temperatures().chargeAirOut();
    air.advanceTo(480);

    assertThat(air.state().temperatures().chargeAirOut()).isCloseTo(before, within(4.0));
    assertThat(water.state().temperatures().chargeAirOut()).isGreaterThan(before + 15);
  }

  /**
   * One more heat exchanger and 4.9 L more coolant, same load: charge coolant at 84, then 90 degC
   * after two minutes, engine coolant at 97 degC, no torque lost (common practice, no source).
   */
  @Test
  void secondExchangerAndMoreCoolantKeepTheTorqueOnTheDynamometer() {
    Scenario scenario = scenario("dyno-pull");
    Rig improved =
        scenario
            .rig()
            .with(RigTrait.CHARGE_CIRCUIT_LITRES, 4.4 + 4.9)
            .with(RigTrait.CHARGE_RADIATOR_W_PER_K, 170);
    Drive drive = new Drive(scenario.with(improved), 1);

    drive.advanceTo(115);
    assertThat(drive.state().temperatures().chargeCoolant()).isCloseTo(84, within(6.0));
    drive.advanceTo(140);
    assertThat(drive.state().temperatures().chargeCoolant()).isCloseTo(90, within(6.0));
    assertThat(drive.state().temperatures().engineCoolant()).isCloseTo(97, within(4.0));
    assertThat(drive.state().isDerated()).isFalse();
  }

  /** Work at the wheels becomes height, speed, and what air and tyres take: nothing else. */
  @Test
  void workAtTheWheelsIsAccountedFor() {
    Rig rig = Rig.usual().with(RigTrait.DRAG_AREA_M2, 0.5).with(RigTrait.ROLLING_RESISTANCE, 0.003);
    Drive drive = new Drive(scenario("cool-day").with(rig), 1);
    double work = 0;
    double resisted = 0;
    for (int i = 1; i * 0.05 <= 400; i++) {
      drive.advanceTo(i * 0.05);
      PlantState.Motion motion = drive.state().motion();
      double air = motion.speed() + drive.state().around().headwindMetresPerSecond();
      work += motion.wheelForce() * motion.speed() * 0.05;
      resisted += (0.5 * 1.22 * 0.5 * air * air + 7200 * 9.80665 * 0.003) * motion.speed() * 0.05;
    }
    double speed = drive.state().motion().speed();
    double risen = drive.place().orElseThrow().altitude() - 140;

    assertThat(work)
        .isCloseTo(
            resisted + 7200 * 9.80665 * risen + 0.5 * 7200 * 1.06 * speed * speed,
            within(0.01 * work));
  }

  /** What the vehicle file tells the program about the rig is what the rig is. */
  @Test
  void vehicleFilesTellTheTruthAboutTheirRigs() {
    for (Scenario scenario : DemoWorld.scenarios()) {
      Rig rig = scenario.rig();
      assertThat(DemoWorld.vehicleFile(scenario))
          .contains("\"mass_kg\": %.0f,".formatted(rig.of(RigTrait.MASS_KG)))
          .contains("\"drag_area_m2\": %s".formatted(rig.of(RigTrait.DRAG_AREA_M2)))
          .contains("\"tyre_radius_m\": %s".formatted(rig.of(RigTrait.TYRE_RADIUS_M)))
          .contains("\"gear_ratios\": " + rig.gearRatios())
          .contains(
              "\"charge_air_temp_out\", \"limit_degC\": %.0f,"
                  .formatted(rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC)));
    }
  }

  @Test
  void roadRisesByItsGrades() {
    Track road = ((Course.OnRoad) scenario("cool-day").course()).road();
    double risen = 0;
    for (double metres = 0; metres < road.length(); metres += 1) {
      risen += road.at(metres + 0.5).gradePercent() / 100;
    }

    assertThat(road.at(road.length()).altitude() - road.startAltitude())
        .isCloseTo(risen, within(0.5));
    assertThat(road.at(12_000).gradePercent()).isBetween(5.0, 7.0);
  }

  private static Scenario scenario(String name) {
    return DemoWorld.scenario(name).orElseThrow();
  }

  private static Rig anyRig(long seed) {
    Random random = new Random(seed);
    Rig rig = Rig.usual();
    if (random.nextBoolean()) {
      rig = rig.cooledBy(Rig.Cooling.AIR_TO_AIR);
    }
    for (RigTrait trait : RigTrait.values()) {
      double share = random.nextDouble();
      rig = rig.with(trait, trait.lowest() + share * (trait.highest() - trait.lowest()));
    }
    return rig;
  }
}
