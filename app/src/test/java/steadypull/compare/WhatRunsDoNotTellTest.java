package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.thermal.Belief;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A comparison tells what it can, and says why not where it cannot. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class WhatRunsDoNotTellTest {
  private static final Vehicle WATER = Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR);
  private static final Vehicle AIR = Vehicle.unknown("invented", CoolingLayout.AIR_TO_AIR);

  /** Two runs a side on rollers, all channels. */
  private final PlantPair pair =
      Stream.iterate(401, number -> number + 1)
          .map(number -> PlantPair.of(number, Change.BOTH))
          .filter(each -> each.isOnRollers() && each.runs().runs().size() == 4)
          .findFirst()
          .orElseThrow();

  private Comparison compare(Channel channel, Vehicle vehicle, Channel... missing) {
    List<Run> runs =
        pair.runs().runs().stream().map(run -> HandRuns.without(run, missing)).toList();
    return Comparing.of(
        new RunSet(runs, List.of(), List.of()), channel, vehicle, Conditions.OF_THE_RUNS);
  }

  private static String words(Comparison comparison) {
    return String.join(" ", comparison.caveats());
  }

  @Test
  void theSameRunsTellTheSame() {
    Supplier<Comparison> again =
        () ->
            Comparing.of(pair.runs(), Channels.CHARGE_COOLANT_TEMP, WATER, Conditions.OF_THE_RUNS);

    assertThat(again.get()).isEqualTo(again.get());
  }

  @Test
  void withoutARunOnASideNothingIsToldButWhy() {
    List<Run> before = pair.runs().of(Side.BEFORE);
    Comparison comparison =
        Comparing.of(
            new RunSet(before, List.of(), List.of("kept")),
            Channels.CHARGE_COOLANT_TEMP,
            WATER,
            Conditions.OF_THE_RUNS);

    assertThat(comparison.settledGain()).isEmpty();
    assertThat(comparison.verdict()).isEqualTo(Verdict.NOT_PROVEN);
    assertThat(words(comparison)).contains("kept", "no run after the change");
  }

  @Test
  void aChannelThatNoRunHasIsNamed() {
    Comparison comparison = compare(Channels.ENGINE_OIL_TEMP, WATER, Channels.ENGINE_OIL_TEMP);

    assertThat(words(comparison)).contains("no run has engine_oil_temp");
  }

  @Test
  void withoutAnyLoadNothingIsTold() {
    Comparison comparison =
        compare(
            Channels.CHARGE_COOLANT_TEMP,
            WATER,
            Channels.AIR_MASS_FLOW,
            Channels.FUEL_RATE,
            Channels.DELIVERED_TORQUE);

    assertThat(comparison.settledGain()).isEmpty();
    assertThat(words(comparison)).contains("air flow, fuel rate or torque");
  }

  // By the power alone: the gain shows, but nobody knows how much heat it was.
  @Test
  void withoutMeasuredHeatGainsAreToldAndNoFiguresOfHeat() {
    Comparison measured = compare(Channels.CHARGE_COOLANT_TEMP, WATER);
    Comparison comparison =
        compare(Channels.CHARGE_COOLANT_TEMP, WATER, Channels.CHARGE_AIR_TEMP_IN);

    assertThat(comparison.before().joulesPerKelvin()).isEmpty();
    assertThat(comparison.before().wattsPerKelvin()).isEmpty();
    assertThat(comparison.before().rejectedWatts()).isEmpty();
    assertThat(words(comparison)).contains("not measured");
    assertThat(measured.before().joulesPerKelvin()).isPresent();
    assertThat(width(comparison)).isGreaterThan(width(measured));
    assertThat(comparison.settledGain().orElseThrow().low()).isPositive();
  }

  private static double width(Comparison comparison) {
    Belief gain = comparison.settledGain().orElseThrow();
    return gain.high() - gain.low();
  }

  @Test
  void oilsAreToldInAbsoluteDegrees() {
    Comparison comparison = compare(Channels.ENGINE_OIL_TEMP, WATER);

    assertThat(comparison.isAboveOutside()).isFalse();
    assertThat(comparison.at().getLast().before().orElseThrow()).isBetween(85.0, 130.0);
    assertThat(comparison.before().joulesPerKelvin()).isEmpty();
  }

  @Test
  void chargeAirOfACoolerInTheAirIsItsOwnStore() {
    Comparison comparison = compare(Channels.CHARGE_AIR_TEMP_OUT, AIR);

    assertThat(comparison.settledGain().map(Belief::middle)).isPresent();
    assertThat(comparison.before().effectiveness().orElseThrow().middle()).isBetween(0.3, 0.95);
  }

  @Test
  void whatComesAfterTheShortestLoadIsCalculated() {
    Comparison comparison = compare(Channels.CHARGE_COOLANT_TEMP, WATER);

    assertThat(comparison.commonSeconds())
        .isEqualTo(pair.runs().runs().stream().mapToInt(Run::heldSeconds).min().orElseThrow());
    assertThat(comparison.at())
        .allSatisfy(
            at ->
                assertThat(at.isMeasured()).isEqualTo(at.seconds() <= comparison.commonSeconds()));
  }
}
