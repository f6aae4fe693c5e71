package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.road.climb.ClimbCollection;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.KnownClimb;
import steadypull.road.climb.KnownClimbs;
import steadypull.store.TripLibrary;

/** Trips of the demo season, stored and looked at again. */
class ClimbsOfTheSeasonTest {
  @TempDir private Path folder;
  private final ClimbCollection known = new ClimbCollection(List.of());

  /**
   * The roads have five climbs: ladder, grade and hill one each, the shelf two. Crew truck, van and
   * recovery truck drive them in spring and summer, both ways.
   */
  @Test
  void everyVehicleFindsTheSameClimbs() throws Exception {
    List<String> three = ids(climbs("2026-07-16")); // shelf, ladder, grade
    List<String> two = ids(climbs("2026-07-22")); // ladder, shelf
    List<String> ladder = ids(climbs("2026-05-18")); // recovery truck, a plug was loose
    List<String> recoveryHill = ids(climbs("2026-06-15"));
    List<String> vanHill = ids(climbs("2026-06-24"));
    List<String> wagonGrade = ids(climbs("2026-03-09"));

    assertThat(three).hasSize(4).doesNotHaveDuplicates();
    assertThat(two).containsExactly(three.get(2), three.get(0), three.get(1));
    assertThat(ladder).containsExactly(three.get(2));
    assertThat(wagonGrade).containsExactly(three.get(3));
    assertThat(recoveryHill).hasSize(1).isEqualTo(vanHill).doesNotContainAnyElementsOf(three);
    assertThat(known.all()).hasSize(5);
  }

  /**
   * On a hot day in May the crew truck lost power on the ladder. From its knots: 3 % at 5500 m and
   * 16776 m, 696 m between; the plant cuts torque at 97 degC of charge air.
   */
  @Test
  void aHotClimbTellsPeaksHeadroomEnergyAndTheLostPower() throws Exception {
    ClimbReview ladder = climbs("2026-05-21").climbs().getFirst();

    assertThat(ladder.climb().lengthMetres()).isCloseTo(11_276, within(250.0));
    assertThat(ladder.climb().riseMetres()).isCloseTo(696, within(25.0));
    double peak = told(ladder.peaksCelsius());
    assertThat(peak).isGreaterThan(97);
    double limit = 97;
    assertThat(told(ladder.leastHeadroomKelvin())).isCloseTo(limit - peak, within(1e-9));
    assertThat(ladder.deratedSeconds().orElseThrow()).isBetween(60.0, ladder.climb().seconds());
    // 7.6 t by 696 m are 14.4 kWh; rolling and drag over 11 km at 82 km/h some 5 kWh
    assertThat(ladder.wheelKilowattHours().orElseThrow()).isBetween(16.0, 23.0);
    assertThat(ladder.name()).isEqualTo("climb 1, km 5");
  }

  private static double told(Map<Channel, Double> temperatures) {
    return temperatures.getOrDefault(Channels.CHARGE_AIR_TEMP_OUT, Double.NaN);
  }

  @Test
  void aVehicleWithoutTorqueTellsNeitherEnergyNorLostPower() throws Exception {
    List<ClimbReview> shelf = climbs("2026-05-02").climbs(); // K-line

    assertThat(shelf).hasSize(2);
    assertThat(shelf.getFirst().deratedSeconds()).isEmpty();
    assertThat(shelf.getFirst().wheelKilowattHours()).isEmpty();
  }

  @Test
  void aDynamometerIsNoClimb() throws Exception {
    TripClimbs held = climbs("2026-03-10");

    assertThat(held.climbs()).isEmpty();
    assertThat(held.onRollers()).isPositive();
  }

  @Test
  void aTruckWithoutReceiverHasItsClimbsWithoutIdentity() throws Exception {
    TripClimbs marl = climbs("2026-03-18"); // three times up the hill

    assertThat(marl.climbs()).hasSize(3);
    assertThat(marl.climbs())
        .extracting(ClimbReview::identity)
        .allMatch(ClimbIdentity.Unplaced.class::isInstance);
    assertThat(marl.discovered()).isEmpty();
  }

  @Test
  void aLevelRoadHasNone() throws Exception {
    TripClimbs flats = climbs("2026-08-06");

    assertThat(flats.climbs()).isEmpty();
    assertThat(flats.onRollers()).isZero();
    assertThat(flats.road()).isEqualTo(TripClimbs.RoadKnowledge.GRADES);
  }

  @Test
  void aNameThatPeopleGaveIsShown() throws Exception {
    climbs("2026-06-15");
    KnownClimb hill = known.all().getFirst().named("the hill");

    TripClimbs again = climbs("2026-06-24", new ClimbCollection(List.of(hill)));

    assertThat(again.climbs().getFirst().name()).isEqualTo("the hill");
  }

  private TripClimbs climbs(String day) throws Exception {
    TripClimbs climbs = climbs(day, known);
    climbs.discovered().forEach(known::add);
    return climbs;
  }

  private TripClimbs climbs(String day, KnownClimbs before) throws Exception {
    String trip = SeasonTripKept.in(folder, day);
    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      return TripClimbs.of(library, trip, before, _ -> Optional.empty());
    }
  }

  private static List<String> ids(TripClimbs climbs) {
    List<String> ids = new ArrayList<>();
    for (ClimbReview review : climbs.climbs()) {
      ids.add(
          switch (review.identity()) {
            case ClimbIdentity.Known(KnownClimb same) -> same.id();
            case ClimbIdentity.New(KnownClimb found) -> found.id();
            case ClimbIdentity.Part _, ClimbIdentity.Fragment _, ClimbIdentity.Unplaced _ -> "none";
          });
    }
    return ids;
  }
}
