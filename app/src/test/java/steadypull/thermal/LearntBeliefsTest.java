package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.TripHeat;

/** What a drive begins with, and what it does with it. */
class LearntBeliefsTest {
  private static final Instant START = Instant.parse("2026-05-01T08:00:00Z");
  private static final double OUTSIDE = 30;
  private static final double JOULES_PER_KELVIN = 30_000;

  /** A condenser of 3 kW in 1 kg/s of air. */
  private static final double FRONT_KELVIN = 3;

  /** A coolant probe; common practice 4 to 10 s, no source. */
  private static final double PROBE_SECONDS = 6;

  private static HeatBalance balance(Store store) {
    return switch (store) {
      case CHARGE_INLET -> new CompressorOutlet();
      case CHARGE_AIR -> new ChargeAir(CoolingLayout.WATER_TO_AIR);
      case CHARGE_COOLANT -> new ChargeCoolant();
      case ENGINE_COOLANT -> new EngineCoolant();
      case ENGINE_OIL -> new EngineOil();
      case TRANSMISSION_FLUID -> new TransmissionFluid();
      case EXHAUST -> new ExhaustGas();
    };
  }

  /** What a vehicle has shown must never be taken for something else. */
  @ParameterizedTest
  @EnumSource(Store.class)
  void everyParameterHasALastingNameOfItsOwn(Store store) {
    List<HeatQuantity> quantities = StoreQuantities.of(store, balance(store));

    assertThat(quantities).hasSameSizeAs(balance(store).parameters());
    for (int i = 0; i < quantities.size(); i++) {
      Parameter parameter = balance(store).parameters().get(i);
      assertThat(quantities.get(i).physical(quantities.get(i).usual()))
          .isCloseTo(parameter.usual(), within(1e-9 * Math.abs(parameter.usual())));
    }
    assertThat(
            Stream.of(Store.values())
                .flatMap(each -> StoreQuantities.of(each, balance(each)).stream())
                .map(HeatQuantity::id)
                .collect(Collectors.toList()))
        .doesNotHaveDuplicates();
  }

  /** Trips that have shown a circuit of 30 kJ/K that moves so much. */
  private static LearntHeat taught(double wattsPerKelvin) {
    List<HeatQuantity> quantities = StoreQuantities.of(Store.CHARGE_COOLANT, new ChargeCoolant());
    LearntHeat learnt = LearntHeat.NOTHING;
    for (int trip = 0; trip < 8; trip++) {
      List<HeatTold> told = new ArrayList<>();
      told.add(new HeatTold(quantities.get(0), Math.log(JOULES_PER_KELVIN), 0.05));
      told.add(new HeatTold(quantities.get(1), Math.log(wattsPerKelvin), 0.05));
      learnt = learnt.after(new TripHeat(1, told, List.of()), START.plusSeconds(trip * 86_400L));
    }
    return learnt;
  }

  /** Drives a circuit that moves so much, two minutes hard and two minutes easy; W/K found. */
  private static double found(LearntHeat learnt, double wattsPerKelvin, int seconds) {
    ChannelEstimate estimate =
        new ChannelEstimate(Store.CHARGE_COOLANT, new ChargeCoolant(), learnt, 0, OUTSIDE);
    double celsius = OUTSIDE + 12;
    double probe = celsius;
    double[] around = new double[Store.COUNT];
    for (int second = 1; second <= seconds; second++) {
      boolean isHard = second / 120 % 2 == 0;
      Load load =
          new Load(isHard ? 150 : 40, 2000, 25, isHard ? 380 : 120, isHard ? 0.2 : 0.08, OUTSIDE);
      around[Store.CHARGE_INLET.index()] = isHard ? 160 : 75;
      around[Store.CHARGE_AIR.index()] = celsius + 12;
      double heat =
          load.airKilogramsPerSecond() * 1011 * (around[Store.CHARGE_INLET.index()] - celsius - 12);
      celsius += (heat - wattsPerKelvin * (celsius - OUTSIDE - FRONT_KELVIN)) / JOULES_PER_KELVIN;
      probe += (celsius - probe) / PROBE_SECONDS;
      estimate.advance(second, load, around, OptionalDouble.of(Math.rint(probe)));
    }
    return estimate.physical(estimate.state())[1];
  }

  @Test
  void whatWasTaughtIsThereFromTheFirstSecond() {
    assertThat(found(taught(600), 600, 1)).isBetween(560.0, 615.0);
    assertThat(found(LearntHeat.NOTHING, 600, 1)).isBetween(290.0, 310.0);
    assertThat(Math.abs(found(taught(600), 600, 120) - 600))
        .isLessThan(Math.abs(found(LearntHeat.NOTHING, 600, 120) - 600));
  }

  /**
   * It moved 600 W/K for eight trips and moves 240 now. After five minutes a drive that trusted
   * what was taught would still believe 387.
   */
  @Test
  void aCoolerThatHasCloggedOvernightIsBelievedByTheDrive() {
    LearntHeat taught = taught(600);

    assertThat(found(taught, 240, 300)).isBetween(220.0, 360.0);
    assertThat(found(taught, 240, 900)).isBetween(220.0, 325.0);
  }

  @Test
  void whatLiesBeyondAllReasonIsTakenForTheEdgeOfIt() {
    HeatQuantity conductance = StoreQuantities.of(Store.CHARGE_COOLANT, new ChargeCoolant()).get(1);
    HeatTold nonsense = new HeatTold(conductance, Math.log(90_000), 0.01);
    LearntHeat learnt =
        LearntHeat.NOTHING.after(new TripHeat(1, List.of(nonsense), List.of()), START);

    LearntBeliefs beliefs = new LearntBeliefs(Store.CHARGE_COOLANT, new ChargeCoolant(), learnt);

    assertThat(beliefs.coordinate(1)).isEqualTo(Math.log(300) + 2.5 * 0.8);
  }
}
