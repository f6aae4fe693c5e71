package steadypull.demo.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlantTest {
  private static final Surroundings HOT_CLIMB = new Surroundings(0.06, 38, 99, 0);
  private static final WarmStart WARM = new WarmStart(60, 90, 95, 80, 25);

  /** Road load equation; worked value of the physics sheet, section 7 (computed there). */
  @Test
  void roadLoadIsTheSumOfItsParts() {
    Rig rig =
        Rig.usual()
            .with(RigTrait.MASS_KG, 11_800)
            .with(RigTrait.ROLLING_RESISTANCE, 0.009)
            .with(RigTrait.DRAG_AREA_M2, 4.2);
    // Density 1.145 kg/m3 at 101.325 kPa.
    double celsius = 101_325 / (287.05287 * 1.145) - 273.15;
    RoadForces forces = new RoadForces(rig);

    assertThat(forces.at(20.1167, new Surroundings(0.05, celsius, 101.325, 0)))
        .isCloseTo(7791.9, within(1.0));
    assertThat(forces.at(20.1167, new Surroundings(0.06, celsius, 101.325, 0)))
        .isCloseTo(8943.3, within(1.0));
  }

  /** Compressor outlet, k = 1.4: Heywood chapter 6; values of the physics sheet, section 3. */
  @Test
  void compressorOutletFollowsPressureRatioAndEfficiency() {
    assertThat(outletCelsius(20, 3.0, 1.00)).isCloseTo(128.10, within(0.01));
    assertThat(outletCelsius(25, 2.0, 0.70)).isCloseTo(118.28, within(0.01));
    assertThat(outletCelsius(38, 2.5, 0.72)).isCloseTo(167.33, within(0.01));
    assertThat(outletCelsius(38, 3.0, 0.70)).isCloseTo(201.90, within(0.01));
  }

  /** Counter-flow table of Kays and London (physics sheet, section 5). */
  @Test
  void exchangerEffectivenessIsTheTextbooks() {
    assertThat(ChargeCooler.effectiveness(1, 0.5)).isCloseTo(0.5647, within(5e-5));
    assertThat(ChargeCooler.effectiveness(3, 0.25)).isCloseTo(0.9188, within(5e-5));
    assertThat(ChargeCooler.effectiveness(2, 0)).isCloseTo(0.8647, within(5e-5));
  }

  /** First-order lag, closed form: 98 to 112 degC under 120 degC, 240 s (sheet, section 11). */
  @Test
  void sensorLagIsFirstOrder() {
    Lag lag = new Lag(240, 98);
    double seconds = 0;
    while (lag.value() < 112) {
      lag.follow(120, 0.1);
      seconds += 0.1;
    }

    assertThat(seconds).isCloseTo(242.8, within(0.2));
  }

  /** ISO 2533:1975 table: sea level and 2000 m. */
  @Test
  void airDensityIsTheStandardAtmospheres() {
    assertThat(new Surroundings(0, 15, 101.325, 0).airDensity()).isCloseTo(1.2250, within(1e-4));
    assertThat(new Surroundings(0, 2, 79.495, 0).airDensity()).isCloseTo(1.0065, within(1e-4));
  }

  /** What flows in and does not flow out is stored, to a part in a million. */
  @Test
  void heatIsNeitherMadeNorLost() {
    for (Rig.Cooling cooling : Rig.Cooling.values()) {
      Plant plant = new Plant(Rig.usual().cooledBy(cooling), WARM, HOT_CLIMB, 1);
      PlantState.Heat start = plant.state().heat();
      double chargeNet = 0;
      double coolantNet = 0;
      for (int i = 0; i < 6000; i++) {
        plant.step(HOT_CLIMB, new Duty.HoldSpeed(25));
        PlantState.Heat heat = plant.state().heat();
        chargeNet += Plant.STEP_SECONDS * (heat.fromChargeAir() - heat.fromChargeRadiator());
        coolantNet += Plant.STEP_SECONDS * (heat.intoEngineCoolant() - heat.fromEngineRadiator());
      }
      PlantState.Heat end = plant.state().heat();

      assertThat(end.storedInChargeCircuit() - start.storedInChargeCircuit())
          .isCloseTo(chargeNet, within(1.0));
      assertThat(end.storedInEngineCoolant() - start.storedInEngineCoolant())
          .isCloseTo(coolantNet, within(1.0));
    }
  }

  /** A steady climb: wheel power equals road load times speed, and engine power covers it. */
  @Test
  void wheelPowerOfASteadyClimbEqualsTheRoadLoad() {
    Rig light = Rig.usual().with(RigTrait.MASS_KG, 5000);
    Plant plant = drivenFor(light, HOT_CLIMB, 25, 120);
    PlantState at = plant.state();
    double resistance = new RoadForces(light).at(at.motion().speed(), HOT_CLIMB);

    assertThat(at.motion().speed()).isCloseTo(25, within(0.1));
    assertThat(at.motion().wheelForce()).isCloseTo(resistance, within(30.0));
    double wheelPower = at.motion().wheelForce() * at.motion().speed();
    assertThat(wheelPower / at.heat().toShaft())
        .as("driveline and accessories take their part")
        .isBetween(0.85, 0.93);
  }

  /**
   * Heat split of a loaded diesel: shaft 34 to 42 % of the fuel (Heywood, table 12.1; sheet 10).
   */
  @Test
  void shaftTakesItsUsualShareOfTheFuel() {
    PlantState at = drivenFor(Rig.usual(), HOT_CLIMB, 25, 120).state();

    assertThat(at.heat().toShaft() / at.heat().fromFuel()).isBetween(0.34, 0.44);
    assertThat(at.heat().intoEngineCoolant() / at.heat().fromFuel()).isBetween(0.16, 0.35);
    assertThat(at.temperatures().exhaustBeforeTurbine()).isBetween(500.0, 750.0);
  }

  /** Common practice, no source: conductance falls 5 to 8 % per 1000 m (sheet, issue 6). */
  @Test
  void thinAirCoolsLess() {
    CoolingAir air = new CoolingAir(Rig.usual());
    air.step(25, 0, new Surroundings(0, 15, 101.325, 0));
    double low = air.conductance(100);
    air.step(25, 0, new Surroundings(0, 8.5, 89.875, 0));

    assertThat(1 - air.conductance(100) / low).isBetween(0.05, 0.08);
  }

  @Test
  void derateTakesItsShareOfTorquePerKelvin() {
    EngineControl control = new EngineControl(Rig.usual());
    for (int i = 0; i < 1000; i++) {
      control.step(0.05, 109, 90, 100);
    }

    assertThat(control.available()).isCloseTo(1 - 4 * 0.03, within(0.001));
  }

  @Test
  void cloggedCoreAndWeakPumpMakeTheClimbHotter() {
    double clean =
        drivenFor(Rig.usual(), HOT_CLIMB, 25, 200).state().temperatures().chargeCoolant();
    Rig clogged = Rig.usual().with(RigTrait.CLOGGED_SHARE, 0.5);
    double dirty = drivenFor(clogged, HOT_CLIMB, 25, 200).state().temperatures().chargeCoolant();

    assertThat(dirty).isGreaterThan(clean + 4);
  }

  @Test
  void sensorCutsDownToItsStep() {
    assertThat(Sensor.ENGINE_COOLANT.cut(91.97)).isEqualTo(91);
    assertThat(Sensor.ENGINE_COOLANT.cut(-3.2)).isEqualTo(-4);
    assertThat(Sensor.GEARBOX_FLUID.cut(85.1)).isEqualTo(85.0625);
  }

  @Test
  void traitOutsideItsRangeIsRefusedByName() {
    assertThatThrownBy(() -> Rig.usual().with(RigTrait.MASS_KG, 10))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("MASS_KG")
        .hasMessageContaining("10.0");
  }

  private static double outletCelsius(double celsius, double ratio, double efficiency) {
    return Turbocharger.outletKelvin(celsius + 273.15, ratio, efficiency) - 273.15;
  }

  private static Plant drivenFor(Rig rig, Surroundings around, double speed, double seconds) {
    Plant plant = new Plant(rig, WARM, around, 1);
    for (int i = 0; i < seconds / Plant.STEP_SECONDS; i++) {
      plant.step(around, new Duty.HoldSpeed(speed));
    }
    return plant;
  }
}
