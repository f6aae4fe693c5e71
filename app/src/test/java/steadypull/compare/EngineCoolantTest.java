package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channels;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A bigger engine radiator shows what it can do only where the thermostat is fully open. */
@Execution(ExecutionMode.CONCURRENT)
class EngineCoolantTest {
  private static final LocalDate DAY = LocalDate.of(2031, 5, 1);
  private static final int SECONDS = 420;

  /**
   * Three runs a side on two days each, on rollers, with a radiator of 1.4 times the conductance.
   */
  private static Comparison compare(double outside, double newtonMetres, double fanSpeed) {
    Rig rig =
        Rig.usual()
            .with(RigTrait.ENGINE_RADIATOR_W_PER_K, 1300)
            .with(RigTrait.FAN_AIR_M_PER_S, 0)
            .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 190)
            .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 190)
            .with(RigTrait.DERATE_ENGINE_COOLANT_DEGC, 150);
    var errors = SensorErrors.ofVehicle(new Random(7));
    List<Run> runs = new ArrayList<>();
    for (int run = 0; run < 6; run++) {
      Side side = run < 3 ? Side.BEFORE : Side.AFTER;
      var pull =
          new Pull(
              true,
              5,
              18,
              newtonMetres,
              outside + run % 3,
              100,
              0,
              0,
              fanSpeed,
              SECONDS,
              outside + 15,
              88);
      Rig fitted = side == Side.BEFORE ? rig : Change.RADIATOR.both(rig);
      LocalDate day = DAY.plusDays(run < 3 ? run % 2 : 10 + run % 2);
      runs.add(pull.drive(fitted, errors, side, run / 3, day, 90 + run).run());
    }
    return Comparing.of(
        new RunSet(runs, List.of(), List.of()),
        Channels.ENGINE_COOLANT_TEMP,
        Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR),
        Conditions.OF_THE_RUNS);
  }

  @Test
  void whileTheThermostatRegulatesNoLastingGainIsClaimed() {
    Comparison comparison = compare(8, 380, 15);

    assertThat(comparison.verdict()).isEqualTo(Verdict.NOT_PROVEN);
    assertThat(String.join(" ", comparison.caveats())).contains("still regulated");
  }

  @Test
  void withTheThermostatFullyOpenTheRadiatorIsClaimedInAbsoluteDegrees() {
    Comparison comparison = compare(34, 540, 9);

    assertThat(comparison.isAboveOutside()).isFalse();
    assertThat(comparison.caveats()).noneMatch(text -> text.contains("still regulated"));
    assertThat(comparison.verdict()).isNotEqualTo(Verdict.NOT_PROVEN);
    assertThat(comparison.settledGain().orElseThrow().low()).isPositive();
    assertThat(comparison.before().settles().orElseThrow().middle()).isGreaterThan(100);
  }
}
