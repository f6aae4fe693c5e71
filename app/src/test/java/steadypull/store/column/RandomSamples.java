package steadypull.store.column;

import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;

/** Samples of any kind, by a seed: what a trip may hold and what no trip should. */
final class RandomSamples {
  private RandomSamples() {}

  static SampleList of(SplittableRandom random) {
    SampleList samples = new SampleList();
    int[] channels = new int[1 + random.nextInt(12)];
    DoubleSupplier[] values = new DoubleSupplier[channels.length];
    for (int i = 0; i < channels.length; i++) {
      channels[i] = random.nextBoolean() ? i : random.nextInt(65_536);
      values[i] = values(random.split());
    }
    int count = 1 + random.nextInt(random.nextInt(10) == 0 ? 5000 : 200);
    long timeMicros = random.nextInt(3) == 0 ? random.nextLong() : random.nextInt(1_000_000);
    int habit = random.nextInt(4);
    for (int i = 0; i < count; i++) {
      int place = random.nextBoolean() ? i % channels.length : random.nextInt(channels.length);
      timeMicros += step(random, habit);
      samples.sample(channels[place], timeMicros, values[place].getAsDouble());
    }
    return samples;
  }

  private static long step(SplittableRandom random, int habit) {
    return switch (habit) {
      case 0 -> random.nextInt(3) == 0 ? 50_000 + random.nextInt(5000) : 0;
      case 1 -> 90_000 + 1000L * random.nextInt(-1, 2);
      case 2 -> random.nextInt(-50, 50);
      default -> random.nextInt(20) == 0 ? random.nextLong() : random.nextInt(100);
    };
  }

  private static DoubleSupplier values(SplittableRandom random) {
    double scale =
        new double[] {1, 0.1, 100.0 / 255, 1.0 / 32, 0.005, 1.609344, 5.0 / 9}[random.nextInt(7)];
    double offset = new double[] {0, -40, 17.3}[random.nextInt(3)];
    return switch (random.nextInt(5)) {
      case 0 -> () -> random.nextInt(256) * scale + offset;
      case 1 -> () -> random.nextInt(-30_000, 30_000) / 100.0;
      case 2 -> random::nextDouble;
      case 3 -> () -> finite(random);
      default -> () -> random.nextInt(10) == 0 ? finite(random) : random.nextInt(5);
    };
  }

  private static double finite(SplittableRandom random) {
    double value = Double.longBitsToDouble(random.nextLong());
    return Double.isFinite(value) ? value : 0;
  }
}
