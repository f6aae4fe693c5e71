package steadypull.road;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

class PositionFixTest {
  private static final long SECOND_MICROS = 1_000_000;

  /** Whoever asks at whole seconds, before what comes at them, gets each fix once. */
  @ParameterizedTest
  @ValueSource(longs = {0, 1, 500_000, 999_999})
  void eachFixBelongsToOneSecond(long afterMicros) {
    LatestSamples told = new LatestSamples();
    List<Optional<PositionFix>> fixes =
        LongStream.rangeClosed(1, 6)
            .mapToObj(
                second -> {
                  if (second == 2 || second == 4) {
                    long time = (second - 1) * SECOND_MICROS + afterMicros;
                    told.accept(new Sample(Channels.LATITUDE, time, 10 + second));
                    told.accept(new Sample(Channels.LONGITUDE, time, 20));
                  }
                  return PositionFix.ofSecondBefore(told, second * SECOND_MICROS);
                })
            .toList();

    assertThat(fixes.stream().map(fix -> fix.map(PositionFix::latitudeDegrees)))
        .containsExactly(
            Optional.empty(),
            Optional.of(12.0),
            Optional.empty(),
            Optional.of(14.0),
            Optional.empty(),
            Optional.empty());
  }

  @Test
  void halfAPlaceIsNone() {
    LatestSamples told = new LatestSamples();
    told.accept(new Sample(Channels.LATITUDE, 0, 10));

    assertThat(PositionFix.ofSecondBefore(told, SECOND_MICROS)).isEmpty();
  }

  /** Some loggers write 91, 181 or 999 where they have no fix. */
  @ParameterizedTest
  @CsvSource({"91, 20", "-90.5, 20", "10, 180.5", "999, 999", "90, 0", "-89.5, 20"})
  void aPlaceOffTheEarthOrAtAPoleIsNone(double latitude, double longitude) {
    LatestSamples told = new LatestSamples();
    told.accept(new Sample(Channels.LATITUDE, 0, latitude));
    told.accept(new Sample(Channels.LONGITUDE, 0, longitude));

    assertThat(PositionFix.ofSecondBefore(told, SECOND_MICROS)).isEmpty();
  }
}
