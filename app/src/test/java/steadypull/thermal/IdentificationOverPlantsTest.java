package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.vehicle.CoolingLayout;

/**
 * Whether an interval that claims nine in ten holds what the plant really has. The plants share no
 * equation with the models: their water circuits have a warm and a cold end, their thermostats and
 * fans are slow, their sensors lag and cut to whole degrees. {@link IdentificationBenchTest} has
 * the hundred plants that each figure by itself needs.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class IdentificationOverPlantsTest {
  private static final int PLANTS = 16;
  private static final int SECONDS = 1500;

  private final List<PlantBeliefs> plants = drive(3001, PLANTS, SECONDS);

  /** Water-cooled worlds from a number on. */
  static List<PlantBeliefs> drive(int from, int count, int seconds) {
    return IntStream.iterate(from, number -> number + 1)
        .mapToObj(InventedWorlds::world)
        .filter(world -> world.vehicle().layout() == CoolingLayout.WATER_TO_AIR)
        .limit(count)
        .map(world -> PlantBeliefs.of(world, seconds))
        .toList();
  }

  // Some 55 intervals of four figures: fewer than 0.8 of them with p = 0.9 are a chance of 1 in 50.
  @Test
  void nineIntervalsInTenHoldTheTruth() {
    assertThat(share(plants, PlantBeliefs::live, 1)).isGreaterThan(0.80);
    assertThat(share(plants, PlantBeliefs::whole, 1)).isGreaterThan(0.80);
  }

  // The check itself must notice intervals that are half as wide; and intervals that still held
  // the truth at half their width would claim too little.
  @Test
  void intervalsOfHalfTheWidthWouldNotHoldIt() {
    assertThat(share(plants, PlantBeliefs::live, 0.5)).isLessThan(0.80);
  }

  @Test
  void theWholeTripSaysMoreThanWhatWasKnownAtItsEnd() {
    double live = 0;
    double whole = 0;
    for (PlantBeliefs plant : plants) {
      for (int figure = 0; figure < plant.live().size(); figure++) {
        live += width(plant.live().get(figure));
        whole += width(plant.whole().get(figure));
      }
    }
    assertThat(whole).isLessThan(0.97 * live);
  }

  /** Which beliefs of a plant are meant. */
  interface Side {
    List<Belief> of(PlantBeliefs plant);
  }

  private static double share(List<PlantBeliefs> plants, Side side, double factor) {
    return IntStream.range(0, 4)
        .mapToObj(figure -> held(plants, side, figure, factor))
        .reduce(Held.NONE, Held::and)
        .share();
  }

  /** How many intervals of one figure, so many times as wide, hold the truth. */
  static Held held(List<PlantBeliefs> plants, Side side, int figure, double factor) {
    Held held = Held.NONE;
    for (PlantBeliefs plant : plants) {
      double truth = plant.truths().get(figure);
      if (!Double.isNaN(truth)) {
        Belief belief = side.of(plant).get(figure);
        double middle = Math.log(belief.middle());
        double edge = Math.log(truth < belief.middle() ? belief.low() : belief.high());
        boolean isHeld = Math.abs(Math.log(truth) - middle) <= factor * Math.abs(edge - middle);
        held = held.and(new Held(isHeld ? 1 : 0, 1));
      }
    }
    return held;
  }

  /** So many of so many. */
  record Held(int held, int all) {
    static final Held NONE = new Held(0, 0);

    Held and(Held other) {
      return new Held(held + other.held, all + other.all);
    }

    double share() {
      return (double) held / all;
    }
  }

  private static double width(Belief belief) {
    return Math.log(belief.high() / belief.low());
  }
}
