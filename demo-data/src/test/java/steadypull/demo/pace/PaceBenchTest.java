package steadypull.demo.pace;

import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReaderSettings.Pace;

/**
 * Prints how fast and how light the reader is on a link in virtual time: {@code mvn -q -Pbench}.
 * The first two columns say which link; {@link LinkTiming} says what it can carry, {@link BestPace}
 * how the share of the best is reckoned, {@link SinglesLoop} what the plain loop is. Fast, medium
 * and slow: answers of each parameter of the class per second.
 */
@Tag("bench")
class PaceBenchTest {
  @Test
  void printPace() {
    for (Pace pace : new Pace[] {Pace.FULL, Pace.POLITE}) {
      System.out.printf(Locale.ROOT, "%n%s pace%n", pace);
      System.out.printf(
          Locale.ROOT,
          "   baud  ECU ms | values/s   best  share |   loop   gain | CPU %%  loop | B/value  loop"
              + " |  fast medium  slow%n");
      for (LinkTiming timing : LinkTiming.all()) {
        print(PaceRun.measure(timing, pace, 1800, 600));
      }
    }
  }

  private static void print(PaceFigures run) {
    PaceFigures loop = SinglesLoop.repeat(run);
    System.out.printf(
        Locale.ROOT,
        "%7d %7d | %8.1f %6.1f %5.1f%% | %6.1f %5.2fx | %5.2f %5.2f | %7.1f %5.0f |"
            + " %5.2f %6.2f %5.2f%n",
        run.timing().baudRate(),
        run.timing().answerMillis(),
        run.valuesPerSecond(),
        run.valuesPerSecond() / run.shareOfBest(),
        100 * run.shareOfBest(),
        loop.valuesPerSecond(),
        run.valuesPerSecond() / loop.valuesPerSecond(),
        run.processorPercent(),
        loop.processorPercent(),
        run.bytesPerValue(),
        loop.bytesPerValue(),
        run.rate(TimedVehicle.FAST),
        run.rate(TimedVehicle.MEDIUM),
        run.rate(TimedVehicle.SLOW));
  }
}
