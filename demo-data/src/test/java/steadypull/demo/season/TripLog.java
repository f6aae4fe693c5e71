package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.LongPredicate;
import java.util.stream.Stream;

/** Everything that one trip told, kept by channel. */
final class TripLog implements SeasonSink {
  final Map<String, Series> channels = new TreeMap<>();
  final List<SeasonEvent> events = new ArrayList<>();
  final SeasonTrip trip;
  final long endMicros;

  private TripLog(SeasonTrip trip) {
    this.trip = trip;
    endMicros = trip.drive(this);
  }

  static TripLog of(SeasonTrip trip) {
    return new TripLog(trip);
  }

  /** The trips of seed 1 whose description holds all the words, driven. */
  static List<TripLog> ofTrips(String... words) {
    List<TripLog> logs =
        Season.of(1).trips().stream()
            .filter(trip -> Stream.of(words).allMatch(word -> describe(trip).contains(word)))
            .map(TripLog::of)
            .toList();
    assertThat(logs).as("trips with %s", Arrays.toString(words)).isNotEmpty();
    return logs;
  }

  private static String describe(SeasonTrip trip) {
    return "%s [%s] [%s] %s".formatted(trip, trip.label(), trip.fitted(), trip.tags());
  }

  @Override
  public void sample(String channelHeader, long timeMicros, double value) {
    channels.computeIfAbsent(channelHeader, header -> new Series()).add(timeMicros, value);
  }

  @Override
  public void happened(SeasonEvent event) {
    events.add(event);
  }

  Series channel(String header) {
    Series series = channels.get(header);
    assertThat(series).as("%s of %s", header, trip).isNotNull();
    return series == null ? new Series() : series;
  }

  /** When the user marked that. */
  long markMicros(String text) {
    return events.stream()
        .filter(event -> event instanceof SeasonEvent.Mark mark && mark.text().equals(text))
        .findFirst()
        .orElseThrow()
        .timeMicros();
  }

  /** Times of trip and values of one channel, oldest first. */
  static final class Series {
    private long[] times = new long[1024];
    private double[] values = new double[1024];
    private int size;

    private void add(long timeMicros, double value) {
      if (size == times.length) {
        times = Arrays.copyOf(times, 2 * size);
        values = Arrays.copyOf(values, 2 * size);
      }
      times[size] = timeMicros;
      values[size++] = value;
    }

    int size() {
      return size;
    }

    long time(int i) {
      return times[i];
    }

    double value(int i) {
      return values[i];
    }

    long[] times() {
      return Arrays.copyOf(times, size);
    }

    double last() {
      return values[size - 1];
    }

    double greatest() {
      return Arrays.stream(values, 0, size).max().orElseThrow();
    }

    /** The value that holds at a time: the newest that is not younger. */
    double at(long timeMicros) {
      int found = Arrays.binarySearch(times, 0, size, timeMicros);
      return values[Math.max(0, found >= 0 ? found : -found - 2)];
    }

    double mean(long fromMicros, long toMicros) {
      return mean(time -> time >= fromMicros && time < toMicros, value -> value);
    }

    private double mean(LongPredicate when, DoubleUnaryOperator of) {
      double sum = 0;
      int count = 0;
      for (int i = 0; i < size; i++) {
        if (when.test(times[i])) {
          sum += of.applyAsDouble(values[i]);
          count++;
        }
      }
      return sum / count;
    }
  }
}
