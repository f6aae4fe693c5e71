package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.IntStream;
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

  /** Only the channel or the stretch in which the bit lies is missing; all else is as it was. */
  @Test
  void aFlippedBitCostsTheChannelOrTheStretchInWhichItLies() throws Exception {
    byte[] whole = manyStretches().encode();
    SampleList written = SampleList.of(Segment.decode(whole));
    SegmentHead head = SegmentHead.read(whole);
    assertThat(head.stretches()).hasSizeGreaterThan(2);
    SplittableRandom random = new SplittableRandom(17);
    for (int round = 0; round < 300; round++) {
      int octet = head.end() + random.nextInt(whole.length - head.end());
      Segment segment =
          Segment.decodeReadable(flipped(whole.clone(), 8 * octet + random.nextInt(8)));

      List<LostSamples> lost = segment.lost();
      long ofChannels = lost.stream().mapToInt(LostSamples::channel).distinct().count();
      long ofStretches = lost.stream().mapToLong(LostSamples::fromMicros).distinct().count();
      assertThat(Math.min(ofChannels, ofStretches)).as("octet %s", octet).isEqualTo(1);
      SampleList expected = new SampleList();
      written.forEach(
          (channel, timeMicros, value) -> {
            if (lost.stream().noneMatch(it -> holds(it, channel, timeMicros))) {
              expected.sample(channel, timeMicros, value);
            }
          });
      assertThat(SampleList.of(segment)).as("octet %s", octet).isEqualTo(expected);
    }
  }

  private static boolean holds(LostSamples lost, int channel, long timeMicros) {
    return lost.channel() == channel
        && lost.fromMicros() <= timeMicros
        && timeMicros <= lost.toMicros();
  }

  private static SegmentBuilder manyStretches() {
    SplittableRandom random = new SplittableRandom(6);
    SegmentBuilder builder = new SegmentBuilder();
    for (int i = 0; i < 6000; i++) {
      long timeMicros = 250_000L * i + random.nextInt(5000);
      builder.add(0, timeMicros, 60 + i / 10 + random.nextInt(3));
      builder.add(7, timeMicros, random.nextInt(256) * (100.0 / 255));
      if (i % 40 == 0) {
        builder.add(2, timeMicros + 40_000, random.nextInt(5));
      }
    }
    return builder;
  }

  /** Somebody may make the check fit: then it is refused, or it is a segment of finite values. */
  @Test
  void changedBytesWhoseCheckFitsAreRefusedOrWhole() {
    SplittableRandom random = new SplittableRandom(11);
    for (int round = 0; round < 1500; round++) {
      byte[] segment = refitted(mutated(random, segment()));
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
      assertRefusedOrWhole("seed " + seed, refitted(mutated(random, builder.encode())));
    }
  }

  @Test
  void aLaterFormIsRefusedWithTheWayOut() {
    byte[] later = segment();
    later[3] = 2;

    assertThatThrownBy(() -> Segment.decode(later))
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
    assertRefused(Segment::decode, segmentOf(new int[] {1 << 20}, out -> {}));
    assertRefused(Segment::decode, segmentOf(new int[] {1 << 16, 1 << 16, 1 << 16}, out -> {}));
    assertRefused(
        Segment::decode,
        segmentOf(
            new int[] {1},
            out -> {
              out.unsigned(0);
              out.unsigned(0);
              out.unsigned(1L << 40);
            }));
    assertRefused(
        Segment::decode,
        segmentOf(
            new int[] {1},
            out -> {
              out.unsigned(1_000_000);
              out.unsigned(3);
              out.octets(new byte[] {1, 2, 3}, 3);
            }));

    ByteWriter manyChannels = SegmentFormat.begin(SegmentFormat.OVERVIEW);
    manyChannels.unsigned(65_536);
    assertRefused(Overview::decode, SegmentFormat.finish(manyChannels));
  }

  /** Arrivals and shapes multiply: 131 072 arrivals of one shape of 100 samples in some bytes. */
  @Test
  void shapesThatMultiplyBeyondASegmentAreRefused() {
    byte[] bytes =
        segmentOf(
            new int[] {SegmentFormat.MOST_SAMPLES}, DamagedBytesTest::writeShapesThatMultiply);

    assertThatThrownBy(() -> Segment.decode(bytes))
        .hasMessageContaining("expected at most 131072 samples");
  }

  private static void writeShapesThatMultiply(ByteWriter out) {
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
  }

  /** A segment of channel 0 that tells of stretches of so many samples and has one of them. */
  private static byte[] segmentOf(int[] samples, Consumer<ByteWriter> stretch) {
    ByteWriter part = new ByteWriter();
    stretch.accept(part);
    List<Stretch> stretches =
        IntStream.of(samples)
            .mapToObj(count -> new Stretch(new int[] {count}, 0, 0, part.size()))
            .toList();
    ByteWriter out = SegmentFormat.begin(SegmentFormat.SEGMENT);
    new SegmentHead(new int[] {0}, new int[] {0}, stretches, 0).write(out);
    SegmentFormat.writeCheck(part, 0);
    out.append(part);
    ByteWriter values = new ByteWriter();
    SegmentFormat.writeCheck(values, 0);
    out.append(values);
    return out.toByteArray();
  }

  /** Drawing finds buckets by halving. */
  @Test
  void bucketsThatDoNotAscendAreRefused() {
    Buckets buckets = new Buckets(0, 2);
    for (int i = 0; i < 2; i++) {
      buckets.spans[i] = 5L - i;
      buckets.firstMicros[i] = buckets.startMicros(i);
      buckets.lastMicros[i] = buckets.startMicros(i);
    }
    ByteWriter out = SegmentFormat.begin(SegmentFormat.OVERVIEW);
    ChannelList.write(out, new int[] {0});
    try (SeriesWriter series = new SeriesWriter()) {
      BucketSeries.write(series, buckets);
      series.finish(out);
    }

    assertThatThrownBy(() -> Overview.decode(SegmentFormat.finish(out)))
        .hasMessageContaining("expected a span after 5, found span 4");
  }

  private static void assertRefusedOrWhole(String which, byte[] bytes) {
    assertReadAsFarAsItGoes(which, bytes);
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

  /** Where only a part is damaged, the rest comes back, and what is missing is told. */
  private static void assertReadAsFarAsItGoes(String which, byte[] bytes) {
    try {
      Segment segment = Segment.decodeReadable(bytes);
      int[] told = new int[2];
      segment.forEach(
          (channel, timeMicros, value) -> {
            told[0]++;
            assertThat(Double.isFinite(value)).as(which).isTrue();
          },
          () -> told[1]++);
      assertThat(told[0] + told[1]).as(which).isEqualTo(segment.size());
      assertThat(segment.lost().stream().mapToInt(LostSamples::samples).sum())
          .as(which)
          .isEqualTo(told[1]);
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
    check(bytes, 0, bytes.length - CHECK);
    return bytes;
  }

  /** With checks that fit the head and every part that it tells of. */
  private static byte[] refitted(byte[] bytes) {
    try {
      ByteReader in = new ByteReader(bytes, HEAD, bytes.length);
      int length = in.count(bytes.length, "bytes of a head");
      check(bytes, 0, in.skip(length) + length);
      int from = SegmentHead.read(bytes).end();
      for (int octets : SegmentHead.read(bytes).partOctets()) {
        from = check(bytes, from, from + octets);
      }
    } catch (DamagedSegmentException e) {
      // A head that cannot be read has no parts whose checks could be made to fit.
      return bytes;
    }
    return bytes;
  }

  /** Puts a check behind octets and says where it ends. */
  private static int check(byte[] bytes, int from, int end) {
    if (from < 0 || end < from || end + CHECK > bytes.length) {
      return bytes.length;
    }
    CRC32C check = new CRC32C();
    check.update(bytes, from, end - from);
    for (int octet = 0; octet < CHECK; octet++) {
      bytes[end + octet] = (byte) (check.getValue() >>> (8 * octet));
    }
    return end + CHECK;
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
