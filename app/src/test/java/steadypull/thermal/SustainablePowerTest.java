package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.plant.WarmStart;
import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;
import steadypull.vehicle.CoolingLayout;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class SustainablePowerTest {
  private static final double SPEED = 22;
  private static final int GEAR = 4;
  private static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

  private final Pulls hot = Pulls.learning(1, 34);

  /**
   * One store by hand, with the layout's usual figures at 25 m/s, 20 degC, sea level and 1800
   * r/min, thermostat and fan fully open at 107 degC: it gives off (60 + 1450 * 1.3) W/K * 87 K =
   * 169.2 kW, which is 0.2 of the fuel; and fuel is 3 + 2.38 kW a kilowatt + 12 kW a thousand
   * r/min.
   */
  @Test
  void oneStoreGivesThePowerOfAHandCalculation() {
    double given = (60 + 1450 * 1.3) * 87 / 1000;
    double byHand = (given / 0.2 - 3 - 12 * 1.8) / 2.38;

    LoadMaps maps = new LoadMaps();
    StoreSet stores = new StoreSet(CoolingLayout.WATER_TO_AIR);
    stores.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, 0, 90));
    stores.advance(1, load(100, maps));
    OptionalDouble found =
        SustainablePower.highest(
            SettledDraw.middle(stores.estimates()),
            Map.of(Store.ENGINE_COOLANT, 107.0),
            5,
            500,
            kilowatts -> load(kilowatts, maps));
    assertThat(byHand).isCloseTo(345.2, within(0.1));
    assertThat(found.orElseThrow()).isCloseTo(byHand, within(0.5));
  }

  private static Load load(double kilowatts, LoadMaps maps) {
    return new Load(
        kilowatts,
        1800,
        25,
        maps.fuelKilowatts(kilowatts, 1800),
        maps.airKilogramsPerSecond(kilowatts, 1800),
        20);
  }

  /**
   * The plant, which shares no equation with the model, pulls for a quarter of an hour from hot at
   * the power that is held nine times in ten: the channel that is named settles within 5 K under
   * its limit and not above. At the middle, which errs by 2 to 4 % of power here, it stands within
   * 3 K of it; 5 % more, and the engine control takes torque away.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void thePlantHoldsWhatIsToldAndNoMore(int seed) {
    Pulls pulls = Pulls.learning(seed, 30 + 2 * seed);
    Sustainable.UpTo told = (Sustainable.UpTo) pulls.power.kilowatts(pulls.steady(0)).orElseThrow();

    assertThat(told.channel()).isEqualTo(Channels.CHARGE_AIR_TEMP_OUT);
    assertThat(pulls.settledAt(told.p10()).temperatures().chargeAirOut()).isBetween(100.0, 105.0);
    assertThat(pulls.settledAt(told.p10()).isDerated()).isFalse();
    assertThat(pulls.settledAt(told.p50()).temperatures().chargeAirOut()).isBetween(102.0, 108.0);
    assertThat(pulls.settledAt(1.05 * told.p50()).isDerated()).isTrue();
  }

  @Test
  void lessIsHeldOnAHotterDayAndWithMoreToSpare() {
    SplittableRandom random = new SplittableRandom(7);
    for (int round = 0; round < 5; round++) {
      SteadyLoad one = steady(random.nextDouble(16, 23), random.nextDouble(34, 42), 0);
      double held = middle(hot.power.kilowatts(one).orElseThrow());
      assertThat(middle(hot.power.kilowatts(one.in(one.outsideCelsius() + 4)).orElseThrow()))
          .isLessThan(held);
      SteadyLoad spare = steady(one.metresPerSecond(), one.outsideCelsius(), 4);
      assertThat(middle(hot.power.kilowatts(spare).orElseThrow())).isLessThan(held);
    }
  }

  @Test
  void aSteeperGradeAndAHeavierRigAreClimbedMoreSlowly() {
    RoadLoad rig = new RoadLoad(9000, 0.011, 3.8, 1.15);
    RoadLoad heavier = new RoadLoad(10_500, 0.011, 3.8, 1.15);
    SteadyLoad at = steady(SPEED, 36, 0);
    double held = middle(hot.power.metresPerSecond(at, rig, 0.06).orElseThrow());
    assertThat(held).isBetween(10.0, 30.0);
    assertThat(middle(hot.power.metresPerSecond(at, rig, 0.07).orElseThrow())).isLessThan(held);
    assertThat(middle(hot.power.metresPerSecond(at, heavier, 0.06).orElseThrow())).isLessThan(held);
    assertThat(middle(hot.power.metresPerSecond(at.in(42), rig, 0.06).orElseThrow()))
        .isLessThan(held);
  }

  /** What is held on a day of 34 degC stops being possible on a day of 34 degC. */
  @Test
  void theHottestDayOfAPowerIsTheDayOnWhichItIsHeld() {
    SteadyLoad at = hot.steady(0);
    double held = middle(hot.power.kilowatts(at).orElseThrow());
    assertThat(middle(hot.power.outsideCelsius(at, held).orElseThrow()))
        .isCloseTo(at.outsideCelsius(), within(0.5));
    assertThat(middle(hot.power.outsideCelsius(at, 0.9 * held).orElseThrow()))
        .isGreaterThan(at.outsideCelsius() + 2);
  }

  @Test
  void aDriveThatHardlyPulledTellsNothing() {
    SustainablePower power = new SustainablePower(TestVehicles.heavy());
    for (int second = 1; second <= 60; second++) {
      power.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, second * 1_000_000L, 90));
    }
    assertThat(power.kilowatts(steady(SPEED, 30, 0))).isEmpty();
  }

  @Test
  void whereNoHeatBoundsItTheDriveSaysHowFarItLetsTell() {
    SteadyLoad cold = steady(30, -20, 0);
    assertThat(hot.power.kilowatts(cold)).containsInstanceOf(Sustainable.AtLeast.class);
  }

  private SteadyLoad steady(double speed, double celsius, double headroom) {
    return new SteadyLoad(speed, hot.rpmPerSpeed, celsius, 100, headroom);
  }

  private static double middle(Sustainable found) {
    return switch (found) {
      case Sustainable.UpTo upTo -> upTo.p50();
      case Sustainable.AtLeast atLeast -> atLeast.value();
      case Sustainable.Nothing() -> 0;
    };
  }

  /** The demo plant on rollers, with the road's wind. */
  private static final class Pulls {
    /** N.m for two and a half minutes each. */
    private static final double[] TORQUES = {150, 350, 500, 250, 450, 400, 200, 520};

    private final SustainablePower power = new SustainablePower(TestVehicles.heavy());
    private final Surroundings air;
    private final int seed;
    private double rpmPerSpeed;

    private Pulls(int seed, double celsius) {
      this.seed = seed;
      air = new Surroundings(0, celsius, 100, 0);
    }

    static Pulls learning(int seed, double celsius) {
      Pulls pulls = new Pulls(seed, celsius);
      Plant plant = pulls.plant(15);
      for (int second = 1; second <= 1200; second++) {
        pulls.pull(plant, TORQUES[second / 150 % TORQUES.length], 1);
        for (Sensor sensor : Sensor.values()) {
          double value = plant.read(sensor);
          long micros = second * 1_000_000L - 500_000;
          Channels.find(sensor.channel())
              .ifPresent(channel -> pulls.power.accept(new Sample(channel, micros, value)));
        }
      }
      pulls.rpmPerSpeed = plant.state().motion().engineSpeed() / SPEED;
      return pulls;
    }

    private Plant plant(double aboveOutside) {
      WarmStart start = new WarmStart(air.airCelsius() + aboveOutside, 95, 100, 80, SPEED);
      return new Plant(Rig.usual(), start, air, seed);
    }

    private void pull(Plant plant, double newtonMetres, int seconds) {
      for (int step = 0; step < seconds / Plant.STEP_SECONDS - 1e-9; step++) {
        plant.step(air, new Duty.HoldTorque(GEAR, SPEED, newtonMetres, SPEED));
      }
    }

    SteadyLoad steady(double headroom) {
      return new SteadyLoad(SPEED, rpmPerSpeed, air.airCelsius(), 100, headroom);
    }

    PlantState settledAt(double wheelKilowatts) {
      double engine = wheelKilowatts / DerivedChannels.DRIVELINE_EFFICIENCY;
      Plant plant = plant(60);
      pull(plant, engine * NEWTON_METRE_RPM_PER_KILOWATT / (rpmPerSpeed * SPEED), 900);
      return plant.state();
    }
  }
}
