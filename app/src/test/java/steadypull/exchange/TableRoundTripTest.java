package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** Whatever a trip holds comes back from a table bit for bit, plain or packed. */
class TableRoundTripTest {
  private static final long SEED = 4180;

  /** What units are made of: all that a header may hold, above all what CSV must quote. */
  private static final String UNIT_LETTERS = "abcN°µ%/.,;\"'=+-@ \t()|#\\\u2028é\u5186";

  @TempDir private Path folder;

  @Test
  void whatIsWrittenIsReadBackTheSame() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int round = 0; round < 150; round++) {
      List<Channel> channels = anyChannels(random);
      List<Sample> samples = anySamples(random, channels);
      Path file = folder.resolve(round % 3 == 0 ? "trip.csv.gz" : "trip.csv");

      long written =
          TripTable.write(file, channels, samples::forEach, ExportChoice.ALL, TransferWatch.NONE);
      ImportedTable read = ImportedTable.read(file);

      assertThat(written).isEqualTo(samples.size());
      assertThat(inOneOrder(read.samples()))
          .as("seed %d, round %d", SEED, round)
          .isEqualTo(inOneOrder(samples));
      assertThat(read.channels()).as("round %d", round).hasSameElementsAs(channels);
    }
  }

  /** Far from time order the table is written from memory; the result is the same. */
  @Test
  void samplesInAnyOrderAreWrittenInTheOrderOfTime() throws Exception {
    List<Sample> samples = new ArrayList<>();
    for (int each = TableFile.LOOK_AHEAD + 10; each > 0; each--) {
      samples.add(new Sample(Channels.GEAR, each * 100L, each));
    }
    Path file = folder.resolve("trip.csv");
    TripTable.write(
        file, List.of(Channels.GEAR), samples::forEach, ExportChoice.ALL, TransferWatch.NONE);

    assertThat(ImportedTable.read(file).samples()).isEqualTo(inOneOrder(samples));
  }

  private static List<Channel> anyChannels(SplittableRandom random) {
    List<Channel> channels = new ArrayList<>(Channels.all().subList(0, random.nextInt(1, 20)));
    for (int own = random.nextInt(4); own > 0; own--) {
      StringBuilder unit = new StringBuilder();
      for (int letters = random.nextInt(1, 6); letters > 0; letters--) {
        unit.append(UNIT_LETTERS.charAt(random.nextInt(UNIT_LETTERS.length())));
      }
      channels.add(new Channel("own_" + own, unit.toString().replace("\t", "t")));
    }
    return channels;
  }

  private static List<Sample> anySamples(SplittableRandom random, List<Channel> channels) {
    List<Sample> samples = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    for (int count = random.nextInt(1, 300); count > 0; count--) {
      Channel channel = channels.get(random.nextInt(channels.size()));
      long time = random.nextLong(0, random.nextBoolean() ? 50 : 31_000_000_000_000L);
      if (taken.add(channel.id() + time)) {
        samples.add(new Sample(channel, time, anyFinite(random)));
      }
    }
    samples.sort(Comparator.comparingLong(Sample::timeMicros));
    return samples;
  }

  /** Any bits, numbers as sensors have them, and decimal fractions at the edge of what is exact. */
  private static double anyFinite(SplittableRandom random) {
    double bits = Double.longBitsToDouble(random.nextLong());
    return switch (random.nextInt(4)) {
      case 0 -> Double.isFinite(bits) ? bits : 0;
      case 1 -> random.nextInt(-4000, 4000) / 16.0;
      case 2 -> random.nextLong(-1L << 54, 1L << 54) / 1e3;
      default -> random.nextInt() / 100.0;
    };
  }

  private static List<Sample> inOneOrder(List<Sample> samples) {
    return samples.stream()
        .sorted(Comparator.comparingLong(Sample::timeMicros).thenComparing(Sample::channel))
        .toList();
  }
}
