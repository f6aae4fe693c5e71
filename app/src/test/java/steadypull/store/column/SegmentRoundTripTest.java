package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What goes into a segment comes back, in its order and bit for bit. */
class SegmentRoundTripTest {
  @Test
  void everySampleComesBackInItsOrder() throws Exception {
    for (long seed = 0; seed < 200; seed++) {
      SampleList samples = RandomSamples.of(new SplittableRandom(seed));

      assertThat(SampleList.of(decoded(samples))).as("seed " + seed).isEqualTo(samples);
    }
  }

  @Test
  void aColumnHasTheSamplesOfItsChannel() throws Exception {
    for (long seed = 0; seed < 100; seed++) {
      SampleList samples = RandomSamples.of(new SplittableRandom(seed));
      Segment segment = decoded(samples);

      SampleList columns = new SampleList();
      SampleList expected = new SampleList();
      for (int channel : segment.channels()) {
        Column column = segment.column(channel);
        for (int i = 0; i < column.size(); i++) {
          columns.sample(channel, column.timeMicros(i), column.value(i));
        }
        samples.ofChannel(channel).forEach(expected);
      }
      assertThat(columns).as("seed " + seed).isEqualTo(expected);
      assertThat(columns.size()).isEqualTo(samples.size());
    }
  }

  @Test
  void aChannelThatDoesNotOccurHasAnEmptyColumn() throws Exception {
    SampleList samples = new SampleList();
    samples.sample(3, 0, 1.5);

    assertThat(decoded(samples).column(2).size()).isZero();
  }

  @Test
  void theEdgesOfDoublesAndTimesComeBack() throws Exception {
    SampleList samples = new SampleList();
    double[] values = {
      0.0,
      -0.0,
      Double.MIN_VALUE,
      -Double.MIN_VALUE,
      Double.MIN_NORMAL,
      Double.MAX_VALUE,
      -Double.MAX_VALUE,
      0x1p53,
      0x1p53 + 2,
      -0x1p53,
      0x1p62,
      0.1,
      1.0 / 3,
      Math.nextUp(1.0)
    };
    long[] times = {0, Long.MAX_VALUE, Long.MIN_VALUE, -1, 1, Long.MAX_VALUE, 0};
    for (int i = 0; i < 200; i++) {
      samples.sample(65_535 * (i % 2), times[i % times.length], values[i % values.length]);
    }

    assertThat(SampleList.of(decoded(samples))).isEqualTo(samples);
  }

  @Test
  void aFullSegmentComesBackAndTakesNoMore() throws Exception {
    SegmentBuilder builder = new SegmentBuilder();
    SampleList samples = new SampleList();
    for (int i = 0; i < SegmentFormat.MOST_SAMPLES; i++) {
      samples.sample(i % 7, i / 3, i % 100);
    }
    samples.forEach(builder::add);

    assertThat(SampleList.of(Segment.decode(builder.encode()))).isEqualTo(samples);
    assertThatThrownBy(() -> builder.add(0, 0, 0)).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aBuilderIsAsNewWhenCleared() throws Exception {
    SegmentBuilder builder = new SegmentBuilder();
    builder.add(9, 77, 1.25);
    builder.clear();
    builder.add(2, 5, -1);

    Segment segment = Segment.decode(builder.encode());
    assertThat(segment.channels()).containsExactly(2);
    assertThat(segment.firstMicros()).isEqualTo(5);
    assertThat(builder.lastMicros()).isEqualTo(5);
  }

  @Test
  void leastAndGreatestTimeAreToldWhateverTheOrder() throws Exception {
    SegmentBuilder builder = new SegmentBuilder();
    for (long timeMicros : new long[] {40, 10, 30}) {
      builder.add(0, timeMicros, 0);
    }

    Segment segment = Segment.decode(builder.encode());
    assertThat(new long[] {builder.firstMicros(), builder.lastMicros()}).containsExactly(10, 40);
    assertThat(new long[] {segment.firstMicros(), segment.lastMicros()}).containsExactly(10, 40);
  }

  @Test
  void whatIsNoSampleIsNotTaken() {
    SegmentBuilder builder = new SegmentBuilder();

    assertThatThrownBy(() -> builder.add(65_536, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.add(-1, 0, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.add(0, 0, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(builder::encode).isInstanceOf(IllegalStateException.class);
  }

  private static Segment decoded(SampleList samples) throws DamagedSegmentException {
    SegmentBuilder builder = new SegmentBuilder();
    samples.forEach(builder::add);
    return Segment.decode(builder.encode());
  }
}
