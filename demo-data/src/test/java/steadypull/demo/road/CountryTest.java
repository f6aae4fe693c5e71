package steadypull.demo.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The streets of Larkmoor lie to each other as the tests of others rely on. */
class CountryTest {
  private static final double METRES_PER_DEGREE = 111_195;
  private static final Country LARKMOOR = Country.larkmoor();

  @Test
  void toursAreUnbrokenAndTheirHeightFollowsTheirGrade() {
    for (Tour tour : LARKMOOR.tours()) {
      for (double metres = 10; metres < tour.length(); metres += 10) {
        Road.Place before = tour.at(metres - 10);
        Road.Place here = tour.at(metres);
        double risen = (before.gradePercent() + here.gradePercent()) / 200 * 10;
        // a lane is up to 4 % longer or shorter than the middle line; turning round changes lanes
        assertThat(apart(before, here)).as(tour.name() + " at " + metres).isBetween(3.0, 14.0);
        assertThat(here.altitude() - before.altitude())
            .as(tour.name() + " at " + metres)
            .isCloseTo(risen, within(turnsOrForksNear(tour, metres) ? 0.7 : 0.02));
      }
    }
  }

  private static boolean turnsOrForksNear(Tour tour, double metres) {
    double driven = 0;
    for (Tour.Stretch stretch : tour.stretches()) {
      driven += stretch.length();
      if (Math.abs(driven - metres) <= 10) {
        return true;
      }
    }
    return false;
  }

  @Test
  void theOldRoadAccompaniesTheHarrowForKilometresWithAnotherGrade() {
    Tour main = LARKMOOR.overTheHarrow();
    Tour old = LARKMOOR.byTheOldRoad();
    for (double metres = 5300; metres < 8300; metres += 100) {
      assertThat(nearest(main, old.at(metres))).isBetween(25.0, 35.0);
    }
    assertThat(old.at(7000).altitude()).isLessThan(main.at(7000).altitude() - 20);
  }

  @Test
  void brambleLaneCrossesTheHarrowOnABridge() {
    Road.Place bridge = LARKMOOR.overTheHarrow().at(8000);
    Tour lane = LARKMOOR.alongBrambleLane();
    Road.Place closest = lane.at(0);
    for (double metres = 0; metres < lane.length(); metres += 2) {
      if (apart(lane.at(metres), bridge) < apart(closest, bridge)) {
        closest = lane.at(metres);
      }
    }
    assertThat(apart(closest, bridge)).isLessThan(4);
    assertThat(closest.altitude() - bridge.altitude()).isBetween(5.0, 9.0);
  }

  /** Raw receiver altitude differs between passes by 1.3 % of grade over 200 m on open data. */
  @Test
  void theUsualReceiverErrsAsOpenRecordingsDo() {
    double squares = 0;
    int count = 0;
    for (int seed = 0; seed < 40; seed += 2) {
      List<Double> first = gradesOver200Metres(seed);
      List<Double> second = gradesOver200Metres(seed + 1);
      for (int i = 0; i < first.size(); i++) {
        double difference = first.get(i) - second.get(i);
        if (!Double.isNaN(difference)) {
          squares += difference * difference;
          count++;
        }
      }
    }
    assertThat(Math.sqrt(squares / count)).isBetween(1.1, 1.6);
  }

  /** Grades in per cent from receiver heights alone at 22 m/s, NaN where a fix is missing. */
  private static List<Double> gradesOver200Metres(long seed) {
    Tour tour = LARKMOOR.overTheHarrow();
    // reflections are left out: recordings were cleaned of jumps before they were compared
    ReceiverQuality usual = ReceiverQuality.usual();
    ReceiverQuality clean =
        new ReceiverQuality(
            usual.acrossMetres(),
            usual.heightMetres(),
            usual.wanderSeconds(),
            usual.whiteMetres(),
            usual.missesPerHour(),
            usual.outagesPerHour(),
            0);
    SatelliteReceiver receiver = new SatelliteReceiver(clean, seed);
    List<Double> heights = new ArrayList<>();
    for (double metres = 0; metres < tour.length(); metres += 22) {
      Optional<Fix> fix = receiver.next(tour.at(metres), tour.isInTunnel(metres));
      heights.add(fix.map(Fix::altitudeMetres).orElse(Double.NaN));
    }
    List<Double> grades = new ArrayList<>();
    for (int i = 9; i < heights.size(); i += 9) {
      grades.add((heights.get(i) - heights.get(i - 9)) / (9 * 22) * 100);
    }
    return grades;
  }

  @Test
  void tunnelsLeaveTheReceiverWithoutAFix() {
    Tour tour = LARKMOOR.overTheHarrow();
    SatelliteReceiver receiver = new SatelliteReceiver(ReceiverQuality.perfect(), 1);
    assertThat(receiver.next(tour.at(12_500), tour.isInTunnel(12_500))).isEmpty();
    assertThat(receiver.next(tour.at(13_500), tour.isInTunnel(13_500))).isPresent();
    assertThat(LARKMOOR.backOverTheHarrow().isInTunnel(tour.length() - 12_500)).isTrue();
  }

  private static double nearest(Tour tour, Road.Place place) {
    double nearest = Double.POSITIVE_INFINITY;
    for (double metres = 0; metres < tour.length(); metres += 5) {
      nearest = Math.min(nearest, apart(tour.at(metres), place));
    }
    return nearest;
  }

  private static double apart(Road.Place one, Road.Place other) {
    double north = (other.latitude() - one.latitude()) * METRES_PER_DEGREE;
    double narrowing = Math.cos(Math.toRadians(one.latitude()));
    double east = (other.longitude() - one.longitude()) * METRES_PER_DEGREE * narrowing;
    return Math.hypot(north, east);
  }
}
