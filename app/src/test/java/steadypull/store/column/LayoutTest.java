package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Bytes put together by hand from the layout that is written down, not by the writer. */
class LayoutTest {
  /** A line of its own for the check of all since the one before, or since the beginning. */
  private static final String CHECK = "check";

  /** Channel 5 at 0 and 1 s: 20 and 21. */
  private static final String TWO_SAMPLES =
      """
      53 50 53 01       SPS, form 1
      0A                a head of ten octets
      01 06             one channel, six after -1
      07                whose values take seven octets
      01                one stretch
      13                of nineteen octets
      00 C0 84 3D       from 0 us, 1 000 000 us long
      02                with two samples of the channel
      check
      00 00             pool: nothing, as it is
      02 01             two arrivals, one shape
      02 02 01 00       a block of two octets as they are: one column, the first
      03 00 00          shapes: from 0, 0 more each
      00 C0 84 3D 00    times: from 0, on a grid of 1 000 000 us, nothing foreseen
      03 02 00          one step: 1, 0 more each
      check
      00 00             pool: nothing, as it is
      00 00             whole numbers
      03 28 02          values: from 20, 1 more each
      check
      """;

  /** Channel 0 at 0, 1, 2, 3 us: 10, 13, 13 and 19, first differences with two low bits apart. */
  private static final String LOW_BITS =
      """
      53 50 53 01       SPS, form 1
      08                a head of eight octets
      01 01             one channel, one after -1
      0D                whose values take thirteen octets
      01                one stretch
      11                of seventeen octets
      00 03             from 0 us, 3 us long
      04                with four samples of the channel
      check
      00 00             pool: nothing, as it is
      04 01             four arrivals, one shape
      02 02 01 00       a block of two octets as they are: one column, the first
      03 00 00          shapes: from 0, 0 more each
      00 01 00          times: from 0, on a grid of 1 us, nothing foreseen
      03 02 00          three steps: 1, 0 more each
      check
      04 04 00 01 00 03 pool: four octets as they are
      00 00             whole numbers
      01 14 01 02       values: first differences from 10 in steps of 1, two bits apart
      08                low bits 0, 2, 0, 0 from the lowest up: zigzag 0, 6, 0, 12
      check
      """;

  @Test
  void aSegmentPutTogetherByHandIsRead() throws Exception {
    SampleList expected = new SampleList();
    expected.sample(5, 0, 20);
    expected.sample(5, 1_000_000, 21);

    assertThat(SampleList.of(Segment.decode(checked(TWO_SAMPLES)))).isEqualTo(expected);
  }

  @Test
  void theWriterWritesWhatTheLayoutSays() {
    SegmentBuilder builder = new SegmentBuilder();
    builder.add(5, 0, 20);
    builder.add(5, 1_000_000, 21);

    assertThat(HexFormat.ofDelimiter(" ").formatHex(builder.encode()))
        .isEqualTo(HexFormat.ofDelimiter(" ").formatHex(checked(TWO_SAMPLES)));
  }

  @Test
  void differencesAndLowBitsAreReadAsTheLayoutSays() throws Exception {
    SampleList expected = new SampleList();
    expected.sample(0, 0, 10);
    expected.sample(0, 1, 13);
    expected.sample(0, 2, 13);
    expected.sample(0, 3, 19);

    assertThat(SampleList.of(Segment.decode(checked(LOW_BITS)))).isEqualTo(expected);
  }

  /** Check value of CRC-32C: 0xE3069283 for the digits 1 to 9 (catalogues of CRCs; from memory). */
  @Test
  void theCheckIsTheOneOfTheCatalogues() {
    assertThat(check("123456789".getBytes(StandardCharsets.US_ASCII))).isEqualTo(0xE3069283);
  }

  /** What was packed once is read by every later version: this file was written by form 1. */
  @Test
  void aSegmentOfFormOneStaysReadable() throws Exception {
    SampleList expected = new SampleList();
    fixture().forEach(expected);

    assertThat(SampleList.of(Segment.decode(resource("segment-form-1.hex")))).isEqualTo(expected);
  }

  @Test
  void anOverviewOfFormOneStaysReadable() throws Exception {
    Overview overview = Overview.decode(resource("overview-form-1.hex"));
    Segment segment = Segment.decode(resource("segment-form-1.hex"));

    assertThat(overview.channels()).containsExactly(segment.channels());
    for (int channel : segment.channels()) {
      Column samples = segment.column(channel);
      Buckets buckets = overview.buckets(channel);
      int last = buckets.size() - 1;
      assertThat(buckets.firstMicros[0]).isEqualTo(samples.timeMicros(0));
      assertThat(buckets.lastMicros[last]).isEqualTo(samples.timeMicros(samples.size() - 1));
      assertThat(buckets.firsts[0]).isEqualTo(samples.value(0));
      assertThat(buckets.lasts[last]).isEqualTo(samples.value(samples.size() - 1));
      assertThat(DoubleStream.of(buckets.leasts).min())
          .isEqualTo(DoubleStream.of(samples.values()).min());
      assertThat(DoubleStream.of(buckets.greatests).max())
          .isEqualTo(DoubleStream.of(samples.values()).max());
    }
  }

  /** Long and short series and every form of values, by a seed. */
  static SegmentBuilder fixture() {
    SplittableRandom random = new SplittableRandom(20_261_128);
    double[] few = {Math.PI, Math.E, 1 / 3.0, -Math.sqrt(2), 17.0 / 7};
    SegmentBuilder builder = new SegmentBuilder();
    for (int i = 0; i < 300; i++) {
      long timeMicros = 250_000L * i + random.nextInt(5000) + (i < 200 ? 0 : 9_000_000);
      builder.add(0, timeMicros, random.nextInt(40) / 32.0);
      builder.add(1, timeMicros, random.nextInt(400) / 100.0);
      builder.add(2, timeMicros, random.nextInt(256) * (100.0 / 255));
      if (i % 3 == 0) {
        builder.add(3, timeMicros + 40_000, few[random.nextInt(few.length)]);
        builder.add(4, timeMicros + 40_000, random.nextDouble());
        builder.add(300, timeMicros + 40_000, random.nextInt(500) * (7.0 / 3) + 1.1);
      }
    }
    return builder;
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(LayoutTest.class.getResourceAsStream(name), name)) {
      String text = new String(in.readAllBytes(), StandardCharsets.US_ASCII);
      return HexFormat.of().parseHex(text.replaceAll("\\s", ""));
    }
  }

  /** The octets in the first 18 places of each line, and the checks where they stand. */
  private static byte[] checked(String layout) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int from = 0;
    for (String line : layout.lines().toList()) {
      if (line.equals(CHECK)) {
        byte[] since = Arrays.copyOfRange(bytes.toByteArray(), from, bytes.size());
        int check = check(since);
        for (int octet = 0; octet < Integer.BYTES; octet++) {
          bytes.write(check >>> (8 * octet));
        }
        from = bytes.size();
      } else {
        bytes.writeBytes(HexFormat.of().parseHex(line.substring(0, 18).replace(" ", "")));
      }
    }
    return bytes.toByteArray();
  }

  /** CRC-32C bit by bit: polynomial 0x1EDC6F41, reflected (RFC 3385). */
  private static int check(byte[] bytes) {
    int check = -1;
    for (byte octet : bytes) {
      check ^= octet & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        check = (check >>> 1) ^ ((check & 1) == 0 ? 0 : 0x82F63B78);
      }
    }
    return ~check;
  }
}
