package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.road.GradeProfile;

/** What it costs to look for the climb ahead each second of ten hours in hilly country. */
@Tag("bench")
class ClimbAheadBenchTest {
  private static final int HOURS = 10;
  private static final int SECONDS_AN_HOUR = 3600;
  private static final double METRES_PER_SECOND = 24;
  private static final double PIECE_METRES = 50;
  private static final int PIECES_AHEAD = 300;
  private static final double MOST_MILLIS_A_SECOND = 1;

  @Test
  void lookingForTheClimbAheadDoesNotGrowWithTheDrive() {
    RoadSoFar road = new RoadSoFar();
    double[] millis = new double[HOURS];
    int climbs = 0;
    for (int hour = 0; hour < HOURS; hour++) {
      long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      for (int i = 0; i < SECONDS_AN_HOUR; i++) {
        double second = hour * (double) SECONDS_AN_HOUR + i;
        double metres = second * METRES_PER_SECOND;
        road.moved(second, METRES_PER_SECOND, grade(metres));
        climbs += road.climb(ahead(metres)).isPresent() ? 1 : 0;
      }
      long nanos = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin;
      millis[hour] = nanos / 1e6 / SECONDS_AN_HOUR;
    }
    System.out.printf(
        Locale.ROOT,
        "the climb ahead, ms a second of driving: second hour %.3f, last hour %.3f; known in %d"
            + " %%%n",
        millis[1],
        millis[HOURS - 1],
        100 * climbs / (HOURS * SECONDS_AN_HOUR));
    assertThat(climbs).isGreaterThan(HOURS * SECONDS_AN_HOUR / 2);
    assertThat(millis[HOURS - 1]).isLessThan(2 * Arrays.stream(millis).skip(1).min().orElseThrow());
    assertThat(millis[HOURS - 1]).isLessThan(MOST_MILLIS_A_SECOND);
  }

  private static GradeProfile ahead(double metres) {
    double[] grades = new double[PIECES_AHEAD];
    for (int piece = 0; piece < PIECES_AHEAD; piece++) {
      grades[piece] = grade(metres + (piece + 0.5) * PIECE_METRES);
    }
    return new GradeProfile(PIECE_METRES, grades, new double[PIECES_AHEAD]);
  }

  /** Climbs and descents of some kilometres with smaller waves in them. */
  private static double grade(double metres) {
    return 0.05 * Math.sin(metres / 2300) + 0.015 * Math.sin(metres / 310);
  }
}
