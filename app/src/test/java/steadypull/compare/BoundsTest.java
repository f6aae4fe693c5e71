package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channels;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Weather;
import steadypull.thermal.Belief;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** What is told of loads that nobody drove is what the plant does when it is driven there. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class BoundsTest {
  private static final LocalDate DAY = LocalDate.of(2031, 5, 1);
  private static final double SPEED = 19;
  private static final double TORQUE = 540;
  private static final double FAN = 11;
  private static final double LIMIT = 90;
  private static final int SETTLED = 1499;

  private static final Rig RIG =
      Rig.usual()
          .with(RigTrait.CHARGE_RADIATOR_W_PER_K, 200)
          .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 190)
          .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 190)
          .with(RigTrait.DERATE_ENGINE_COOLANT_DEGC, 150);

  private final List<Run> runs = runs();

  private static List<Run> runs() {
    var errors = new SensorErrors(0, 0, 0, 0);
    List<Run> runs = new ArrayList<>();
    for (int run = 0; run < 6; run++) {
      Side side = run < 3 ? Side.BEFORE : Side.AFTER;
      var pull = new Pull(true, 5, SPEED, TORQUE, 22, 100, 0, 0, FAN, 240, 36, 88);
      Rig fitted = side == Side.BEFORE ? RIG : Change.RADIATOR.both(RIG);
      runs.add(pull.drive(fitted, errors, side, run / 3, DAY.plusDays(run), 50 + run).run());
    }
    return runs;
  }

  private Comparison compare(List<Run> chosen, OptionalDouble outside) {
    return Comparing.of(
        new RunSet(chosen, List.of(), List.of()),
        Channels.CHARGE_COOLANT_TEMP,
        Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR),
        new Conditions(outside, OptionalDouble.of(LIMIT)));
  }

  /** Where the plant of the side before really settles, degC. */
  private static double settles(double outside, double newtonMetres) {
    var at =
        new Truth.At(
            5, SPEED, newtonMetres, FAN, outside, Weather.kilopascals(100), outside + 14, 88);
    return Truth.of(Change.NOTHING, RIG, at, List.of(state -> state.temperatures().chargeCoolant()))
        .getFirst()
        .before(SETTLED);
  }

  @Test
  void inTheHottestAirThatIsToldThePlantSettlesAtTheLimit() {
    Belief hottest =
        compare(runs, OptionalDouble.empty()).before().hottestOutsideCelsius().orElseThrow();

    assertThat(settles(hottest.middle(), TORQUE)).isCloseTo(LIMIT, within(4.0));
    assertThat(settles(hottest.low(), TORQUE)).isLessThan(LIMIT + 1);
    assertThat(settles(hottest.high(), TORQUE)).isGreaterThan(LIMIT - 1);
  }

  @Test
  void atThePowerThatIsToldThePlantKeepsFiveKelvin() {
    Comparison comparison = compare(runs, OptionalDouble.of(40));
    double share =
        comparison.before().sustainableKilowatts().orElseThrow().middle()
            / comparison.powerKilowatts().orElseThrow();

    assertThat(settles(40, TORQUE * share)).isCloseTo(LIMIT - 5, within(5.0));
  }

  // 15 degC warmer air than any run had: the gain above outside is brought there by the model.
  @Test
  void aWishedOutsideTemperatureIsTheCommonOne() {
    Comparison comparison = compare(runs, OptionalDouble.of(37));

    assertThat(comparison.outsideCelsius()).hasValue(37);
    assertThat(comparison.before().settles().orElseThrow().middle())
        .isCloseTo(settles(37, TORQUE) - 37, within(4.0));
    assertThat(comparison.before().secondsToLimit().orElseThrow()).isBetween(120.0, 900.0);
  }

  // On one day wind, sensors and fan are the same for both sides: the pair is surer than two
  // groups.
  @Test
  void beforeAndAfterOnOneDayAreSurerThanOnSeveral() {
    List<Run> sameDay = runs.stream().map(run -> HandRuns.on(run, DAY)).toList();

    assertThat(width(compare(sameDay, OptionalDouble.empty())))
        .isLessThan(0.9 * width(compare(runs, OptionalDouble.empty())));
  }

  @Test
  void oneRunASideIsHonestlyWide() {
    List<Run> two = List.of(runs.getFirst(), runs.getLast());

    assertThat(width(compare(two, OptionalDouble.empty())))
        .isGreaterThan(1.2 * width(compare(runs, OptionalDouble.empty())));
    assertThat(compare(two, OptionalDouble.empty()).verdict()).isNotEqualTo(Verdict.PROVEN);
  }

  private static double width(Comparison comparison) {
    Belief gain = comparison.settledGain().orElseThrow();
    return gain.high() - gain.low();
  }
}
