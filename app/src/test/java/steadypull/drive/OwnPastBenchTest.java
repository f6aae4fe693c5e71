package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.TourDrive;

/** What it costs that a trip knows its own past: processor time of one thread, a second driven. */
@Tag("bench")
class OwnPastBenchTest {
  private static final double MOST_MILLIS_A_SECOND = 1;

  @Test
  void aTripsOwnPastCostsUnderAMillisecondASecond() {
    for (int warm = 0; warm < 3; warm++) {
      cost(true, 20 + warm);
      cost(false, 20 + warm);
    }
    double with = 0;
    double without = 0;
    for (int seed = 1; seed <= 5; seed++) {
      with += cost(true, seed) / 5;
      without += cost(false, seed) / 5;
    }
    System.out.printf(
        Locale.ROOT,
        "a second of driving: %.2f ms with the trip's own past, %.2f ms without%n",
        with,
        without);
    assertThat(with - without).isLessThan(MOST_MILLIS_A_SECOND);
  }

  private static double cost(boolean isLearning, long seed) {
    TourDrive drive = TourDrive.of(Country.larkmoor().turnedAround(), seed);
    RoadSight road = new RememberedRoad((place, metres, taker) -> taker.accept(Map.of()));
    RoadSight sight = isLearning ? road : new Forgetful(road);
    long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    int seconds = WatchedTour.of(drive, sight).size();
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin) / 1e6 / seconds;
  }

  private record Forgetful(RoadSight road) implements RoadSight {
    @Override
    public void fixed(PositionFix fix) {
      road.fixed(fix);
    }

    @Override
    public void moved(double seconds, double metres) {
      road.moved(seconds, metres);
    }

    @Override
    public void driven(RoadPass piece) {}

    @Override
    public RoadAhead ahead() {
      return road.ahead();
    }
  }
}
