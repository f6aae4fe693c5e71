package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;

/** Bytes that are no segment are refused with words, whatever they are. */
class DamagedBytesTest {
  private static final int HEAD = 4;
  private static final int CHECK = 4;
  private static final byte[] SEGMENT = builder().encode();
  private static final byte[] OVERVIEW = builder().encodeOverview();

  private interface Decoder {
    void decode(byte[] bytes) throws DamagedSegmentException;
  }

  @Test
  void aPieceCutOffAnywhereIsRefused() {
    for (int end = 0; end < segment().length; end++) {
      int length = end;
      assertRefused(Segment::decode, Arrays.copyOf(segment(), length));
    }
    for (int end = 0; end < overview().length; end++) {
      int length = end;
      assertRefused(Overview::decode, Arrays.copyOf(overview(), length));
    }
  }

  /** CRC-32C tells every change of one bit. */
  @Test
  void everyFlippedBitIsRefused() {
    for (int bit = 0; bit < 8 * segment().length; bit++) {
      assertRefused(Segment::decode, flipped(segment(), bit));
    }
    for (int bit = 0; bit < 8 * overview().length; bit++) {
      assertRefused(Overview::decode, flipped(overview(), bit));
    }
  }

  /** Somebody may make the check fit: then it is refused, or it is a segment of finite values. */
  @Test
  void changedBytesWhoseCheckFitsAreRefusedOrWhole() {
    SplittableRandom random = new SplittableRandom(11);
    for (int round = 0; round < 1500; round++) {
      byte[] segment = checked(mutated(random, segment()));
      byte[] overview = checked(mutated(random, overview()));
      assertRefusedOrWhole("round " + round, segment);
      assertDrawn(segment, overview);
    }
  }

  /** Whatever stands there, there is a line to draw, and nothing is thrown. */
  private static void assertDrawn(byte[] segment, byte[] overview) {
    TripLines lines = new TripLines(new OneSegment(segment, overview));
    for (long pixelMicros : new long[] {1, 100_000, 4_000_000, 70_000_000}) {
      for (int channel : new int[] {0, 2, 7}) {
        assertThat(lines.line(channel, 3_000_000, 3_000_000 + 20 * pixelMicros, 20).columns())
            .isEqualTo(20);
      }
    }
  }

  @Test
  void changedBytesOfAnyKindOfSegmentAreRefusedOrWhole() {
    for (int seed = 0; seed < 600; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      SegmentBuilder builder = new SegmentBuilder();
      RandomSamples.of(random).forEach(builder::add);
      assertRefusedOrWhole("seed " + seed, checked(mutated(random, builder.encode())));
    }
  }

  @Test
  void aLaterFormIsRefusedWithTheWayOut() {
    byte[] later = segment();
    later[3] = 2;

    assertThatThrownBy(() -> Segment.decode(checked(later)))
        .isInstanceOf(DamagedSegmentException.class)
        .hasMessage(
            "Could not read a piece of a trip: expected form 1, found form 2: a newer version of"
                + " the program wrote it, update the program, or the bytes are damaged. The rest of"
                + " the trip is not touched by it.");
  }

  @Test
  void aSegmentIsNoOverview() {
    assertRefused(Overview::decode, segment());
    assertRefused(Segment::decode, overview());
  }

  /** A few bytes that ask for more samples than a segment holds. */
  @Test
  void headersThatAskForTooMuchAreRefusedBeforeAnythingIsMade() {
    ByteWriter manyArrivals = SegmentFormat.begin(SegmentFormat.SEGMENT);
    ChannelList.write(manyArrivals, new int[] {0});
    manyArrivals.unsigned(0);
    manyArrivals.unsigned(0);
    manyArrivals.unsigned(1L << 40);
    assertRefused(Segment::decode, SegmentFormat.finish(manyArrivals));

    ByteWriter longBlock = SegmentFormat.begin(SegmentFormat.SEGMENT);
    ChannelList.write(longBlock, new int[] {0});
    longBlock.unsigned(1_000_000);
    longBlock.unsigned(3);
    longBlock.octets(new byte[] {1, 2, 3}, 3);
    assertRefused(Segment::decode, SegmentFormat.finish(longBlock));

    ByteWriter manyChannels = SegmentFormat.begin(SegmentFormat.OVERVIEW);
    manyChannels.unsigned(65_536);
    assertRefused(Overview::decode, SegmentFormat.finish(manyChannels));
  }

  /** Arrivals and shapes multiply: 131 072 arrivals of one shape of 100 samples in some bytes. */
  @Test
  void shapesThatMultiplyBeyondASegmentAreRefused() {
    ByteWriter out = SegmentFormat.begin(SegmentFormat.SEGMENT);
    ChannelList.write(out, new int[] {0});
    try (SeriesWriter series = new SeriesWriter()) {
      series.body().unsigned(SegmentFormat.MOST_SAMPLES);
      series.body().unsigned(1);
      ByteWriter shape = new ByteWriter();
      shape.unsigned(100);
      shape.octets(new byte[100], 100);
      series.block(shape);
      series.repeating(new long[SegmentFormat.MOST_SAMPLES], SegmentFormat.MOST_SAMPLES);
      ArrivalTimes.write(
          series, new long[SegmentFormat.MOST_SAMPLES], new int[SegmentFormat.MOST_SAMPLES]);
      series.finish(out);
    }

    assertThatThrownBy(() -> Segment.decode(SegmentFormat.finish(out)))
        .hasMessageContaining("expected at most 131072 samples");
  }

  private static void assertRefusedOrWhole(String which, byte[] bytes) {
    try {
      Segment segment = Segment.decode(bytes);
      int[] told = new int[1];
      segment.forEach(
          (channel, timeMicros, value) -> {
            told[0]++;
            assertThat(Double.isFinite(value)).as(which).isTrue();
          });
      assertThat(told[0]).as(which).isEqualTo(segment.size());
    } catch (DamagedSegmentException e) {
      assertThat(e).as(which).hasMessageContaining("expected");
    }
  }

  private static void assertRefused(Decoder decoder, byte[] bytes) {
    try {
      decoder.decode(bytes);
    } catch (DamagedSegmentException e) {
      return;
    }
    fail("Not refused: " + Arrays.toString(bytes));
  }

  private static byte[] mutated(SplittableRandom random, byte[] bytes) {
    byte[] mutated = bytes.clone();
    for (int change = 0; change <= random.nextInt(3); change++) {
      int place = HEAD + random.nextInt(mutated.length - HEAD - CHECK);
      mutated[place] = (byte) (random.nextBoolean() ? random.nextInt() : mutated[place] ^ 1);
    }
    return mutated;
  }

  private static byte[] checked(byte[] bytes) {
    CRC32C check = new CRC32C();
    check.update(bytes, 0, bytes.length - CHECK);
    for (int octet = 0; octet < CHECK; octet++) {
      bytes[bytes.length - CHECK + octet] = (byte) (check.getValue() >>> (8 * octet));
    }
    return bytes;
  }

  private static byte[] flipped(byte[] bytes, int bit) {
    bytes[bit / 8] ^= (byte) (1 << (bit % 8));
    return bytes;
  }

  private static byte[] segment() {
    return SEGMENT.clone();
  }

  private static byte[] overview() {
    return OVERVIEW.clone();
  }

  /** Some minutes of a few channels, so that long and short series occur. */
  private static SegmentBuilder builder() {
    SplittableRandom random = new SplittableRandom(5);
    SegmentBuilder builder = new SegmentBuilder();
    for (int i = 0; i < 400; i++) {
      long timeMicros = 250_000L * i + random.nextInt(5000);
      builder.add(0, timeMicros, 60 + i / 10 + random.nextInt(3));
      builder.add(7, timeMicros, random.nextInt(256) * (100.0 / 255));
      if (i % 4 == 0) {
        builder.add(2, timeMicros + 40_000, random.nextDouble());
      }
    }
    return builder;
  }
}
