package steadypull.thermal;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** The moments ahead at which a forecast is taken: dense where the driver can still act. */
final class HorizonGrid {
  private HorizonGrid() {}

  /** Seconds ahead, rising: 0 to 60 in 5 s, to 180 in 10 s, to 300 in 20 s, to 600 in 30 s. */
  static double[] secondsAhead() {
    return Stream.of(range(0, 60, 5), range(70, 180, 10), range(200, 300, 20), range(330, 600, 30))
        .flatMapToDouble(Function.identity())
        .toArray();
  }

  /** How many of those moments, the first, 0, among them, come until some seconds ahead. */
  static int until(double seconds) {
    return (int) Arrays.stream(secondsAhead()).filter(each -> each <= seconds).count();
  }

  /** Step lengths that lead far enough for every store to settle: two hours, growing. */
  static double[] untilSettled() {
    return DoubleStream.concat(
            DoubleStream.generate(() -> 10).limit(30), DoubleStream.generate(() -> 60).limit(115))
        .toArray();
  }

  private static DoubleStream range(double from, double to, double step) {
    return DoubleStream.iterate(from, seconds -> seconds <= to, seconds -> seconds + step);
  }
}
