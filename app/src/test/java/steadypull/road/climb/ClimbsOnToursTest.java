package steadypull.road.climb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;
import steadypull.road.grade.PassTrace;

/** Climbs of the invented country, driven by rigs of 5 to 12 t with receivers that err. */
class ClimbsOnToursTest {
  private static final Country LARKMOOR = Country.larkmoor();

  private final ClimbCollection known = new ClimbCollection(List.of());
  private ReceiverQuality quality = ReceiverQuality.usual();

  /**
   * Two climbs over the Harrow, two back over it, one on the old road beside it, one to the Fell
   * from the fork, one up the bends: seven, whoever drives.
   */
  @Test
  void everyClimbOfTheCountryIsOneClimbForEveryRig() {
    for (long seed = 1; seed <= 3; seed++) {
      List<String> there = ids(LARKMOOR.overTheHarrow(), seed);
      List<String> back = ids(LARKMOOR.backOverTheHarrow(), seed);
      List<String> fell = ids(LARKMOOR.toTheFell(), seed);
      List<String> old = ids(LARKMOOR.byTheOldRoad(), seed);
      List<String> bends = ids(LARKMOOR.upTheQuarryBends(), seed);

      assertThat(there).hasSize(2).doesNotContainAnyElementsOf(back);
      assertThat(back).hasSize(2);
      // the first climb of the Harrow, then another than its second
      assertThat(fell.getFirst()).isEqualTo(there.getFirst());
      assertThat(fell.getLast()).isNotIn(there);
      // beside the Harrow's first climb; the second ends with the country
      assertThat(old.getFirst()).isNotIn(there).isNotIn(back);
      assertThat(old.getLast()).isEmpty();
      assertThat(bends).hasSize(1);
      assertThat(ids(LARKMOOR.alongBrambleLane(), seed)).isEmpty();
    }
    Set<String> all = new HashSet<>();
    known.all().forEach(climb -> all.add(climb.id()));
    assertThat(all).hasSize(7);
    assertThat(known.all()).hasSize(7);
  }

  /**
   * Known from a usual receiver; among trees and walls, most are recognised and none is mistaken.
   */
  @Test
  void aPoorReceiverMistakesNoClimb() {
    List<String> there = ids(LARKMOOR.overTheHarrow(), 1);
    List<String> back = ids(LARKMOOR.backOverTheHarrow(), 1);
    List<String> old = ids(LARKMOOR.byTheOldRoad(), 1);
    quality = ReceiverQuality.poor();
    int recognised = 0;
    for (long seed = 2; seed <= 6; seed++) {
      List<String> thereAgain = ids(LARKMOOR.overTheHarrow(), seed);
      List<String> backAgain = ids(LARKMOOR.backOverTheHarrow(), seed);
      List<String> oldAgain = ids(LARKMOOR.byTheOldRoad(), seed);

      recognised += (int) thereAgain.stream().filter(there::contains).count();
      assertThat(thereAgain)
          .hasSize(2)
          .doesNotContainAnyElementsOf(back)
          .doesNotContain(old.get(0));
      assertThat(backAgain).doesNotContainAnyElementsOf(there);
      assertThat(oldAgain).doesNotContainAnyElementsOf(there);
    }
    assertThat(recognised).isGreaterThanOrEqualTo(9);
  }

  @Test
  void whoTurnsAroundOnTheHarrowDrivesAPartOfItsFirstClimb() {
    String first = ids(LARKMOOR.overTheHarrow(), 1).getFirst();

    assertThat(ids(LARKMOOR.turnedAround(), 2)).containsExactly("part of " + first);
  }

  @Test
  void whoTurnsAroundWhereNobodyKnowsTheClimbTellsNoClimbToRemember() {
    assertThat(ids(LARKMOOR.turnedAround(), 2)).containsExactly("");
    assertThat(known.all()).isEmpty();
  }

  /** Without a receiver the grade comes from torque alone, and the heights begin anew. */
  @Test
  void withoutAReceiverTheClimbsAreFoundWithoutIdentity() {
    TourDrive drive = TourDrive.of(LARKMOOR.toTheFell(), 4);
    List<Sample> blind =
        drive.samples().stream()
            .filter(sample -> !Channels.located().contains(sample.channel()))
            .toList();

    List<Climb> climbs = climbs(drive, blind);

    assertThat(climbs).hasSize(2).allMatch(climb -> climb.spots().isEmpty());
    assertThat(identify(climbs.getFirst())).isInstanceOf(ClimbIdentity.Unplaced.class);
  }

  /** With neither torque nor altitude nobody knows how steep it is. */
  @Test
  void withoutTorqueAndAltitudeThereIsNoClimb() {
    TourDrive drive =
        TourDrive.of(
            LARKMOOR.toTheFell(), 4, ReceiverQuality.usual(), Set.of(Sensor.DELIVERED_TORQUE));
    List<Sample> flat =
        drive.samples().stream()
            .filter(sample -> !sample.channel().equals(Channels.ALTITUDE))
            .toList();

    assertThat(climbs(drive, flat)).isEmpty();
  }

  private List<String> ids(Tour tour, long seed) {
    TourDrive drive = TourDrive.of(tour, seed, quality, Set.of());
    List<String> ids = new ArrayList<>();
    for (Climb climb : climbs(drive, drive.samples())) {
      ids.add(
          switch (identify(climb)) {
            case ClimbIdentity.Known(KnownClimb same) -> same.id();
            case ClimbIdentity.New(KnownClimb found) -> {
              known.add(found);
              yield found.id();
            }
            case ClimbIdentity.Part part -> "part of " + part.climb().id();
            case ClimbIdentity.Fragment(), ClimbIdentity.Unplaced() -> "";
          });
    }
    return ids;
  }

  private ClimbIdentity identify(Climb climb) {
    return new ClimbRecognition(known).identify(climb);
  }

  private static List<Climb> climbs(TourDrive drive, List<Sample> samples) {
    PassTrace trace = new PassTrace(drive.vehicle());
    samples.forEach(trace::accept);
    return ClimbFinder.find(trace.finish());
  }
}
