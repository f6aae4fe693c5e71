package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;

/** The plant knows when its load came on; what is found is held to that. */
class LoadOnsetTest {
  private static PlantTrip threePulls(long seed) {
    PlantTrip trip = PlantTrip.onRollers(seed).rollers(200, 0.15);
    for (int pull = 0; pull < 3; pull++) {
      trip.rollers(90, 0.85).rollers(180, 0.15);
    }
    return trip;
  }

  @Test
  void everyPullIsFoundWithinASecondOfItsOnset() {
    for (long seed = 1; seed <= 5; seed++) {
      List<ProposedRun> found = RunFinding.propose(threePulls(seed).read("pulls"));

      assertThat(found).as("seed " + seed).hasSize(3);
      for (int pull = 0; pull < 3; pull++) {
        assertThat(found.get(pull).onsetSeconds()).isCloseTo(200 + 270.0 * pull, within(1.0));
        assertThat(found.get(pull).endSeconds()).isCloseTo(290 + 270.0 * pull, within(1.0));
        assertThat(found.get(pull).heldSeconds()).isGreaterThanOrEqualTo(85);
      }
    }
  }

  /** A link that answers later by any fraction of a second moves the onset with it. */
  @Test
  void anOnsetMovesWithTheTrip() {
    PlantTrip trip = threePulls(7);
    double first = RunFinding.propose(trip.read("pulls")).getFirst().onsetSeconds();
    Random random = new Random(11);
    for (int draw = 0; draw < 30; draw++) {
      double later = 100 * random.nextDouble();
      double moved =
          RunFinding.propose(trip.read("later", _ -> true, Math.round(later * 1e6)))
              .getFirst()
              .onsetSeconds();

      assertThat(moved - later).as("later by " + later).isCloseTo(first, within(1.0));
    }
  }

  /** A polite reader asks every other second, a bus loses answers. */
  @Test
  void lostAnswersMoveAnOnsetByNoMoreThanTheyLast() {
    PlantTrip trip = threePulls(8);
    for (int draw = 0; draw < 20; draw++) {
      Random random = new Random(100 + draw);
      TripSeconds heard = trip.read("lossy", _ -> random.nextInt(3) > 0, 0);
      List<ProposedRun> found = RunFinding.propose(heard);

      assertThat(found).as("draw " + draw).hasSize(3);
      assertThat(found.get(1).onsetSeconds()).as("draw " + draw).isCloseTo(470, within(4.0));
    }
  }

  @Test
  void aGearChangeDoesNotCutARunInTwo() {
    PlantTrip trip = PlantTrip.onRollers(3).rollers(100, 0.15);
    trip.rollers(40, 0.8).rollers(3, 0.1).rollers(60, 0.8).rollers(60, 0.15);

    List<ProposedRun> found = RunFinding.propose(trip.read("shifted"));

    assertThat(found).hasSize(1);
    assertThat(found.getFirst().endSeconds() - found.getFirst().onsetSeconds())
        .isCloseTo(103, within(2.0));
  }

  @Test
  void aCruiseIsNoPull() {
    TripSeconds cruise = PlantTrip.onRollers(4).rollers(300, 0.1).read("cruise");

    assertThat(RunFinding.propose(cruise)).isEmpty();
  }

  /** Fuel tells of a load where torque is not told; the onset is the same. */
  @Test
  void withoutTorqueTheFuelTellsTheOnset() {
    TripSeconds heard =
        threePulls(9)
            .read("fuel", sample -> !sample.channel().equals(Channels.DELIVERED_TORQUE), 0);

    assertThat(heard.power().basis()).isEqualTo(PullPower.Basis.FUEL);
    assertThat(RunFinding.propose(heard))
        .extracting(ProposedRun::onsetSeconds)
        .allSatisfy(onset -> assertThat((onset - 200) % 270).isCloseTo(0, within(2.0)))
        .hasSize(3);
  }

  /** A foot that takes its time: the onset is where half of the step is done. */
  @Test
  void aLoadThatComesSlowlyBeginsAtHalfOfItsStep() {
    PlantTrip trip = PlantTrip.onRollers(5).rollers(100, 0.15);
    double rest = trip.plant().state().work().deliveredTorque();
    List<Double> torques = new ArrayList<>();
    for (int second = 0; second < 40; second++) {
      torques.add(trip.plant().state().work().deliveredTorque());
      trip.rollers(1, 0.15 + 0.7 * Math.min(12, second) / 12);
    }
    double half = (rest + torques.getLast()) / 2;
    int truth = 100;
    while (torques.get(truth - 100) < half) {
      truth++;
    }
    trip.rollers(60, 0.85).rollers(60, 0.15);

    ProposedRun found = RunFinding.propose(trip.read("slow")).getFirst();

    assertThat(found.onsetSeconds()).isCloseTo(truth, within(1.0));
  }
}
