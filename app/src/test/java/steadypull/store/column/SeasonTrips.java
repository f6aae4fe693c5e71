package steadypull.store.column;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.demo.season.Season;
import steadypull.demo.season.SeasonEvent;
import steadypull.demo.season.SeasonSink;
import steadypull.demo.season.SeasonTrip;

/** The trips of the demo season. */
final class SeasonTrips implements MeasuredTrips {
  private final List<SeasonTrip> trips = Season.of(1).trips();
  private final List<String> headers = headers(trips);
  private final Map<String, Integer> numbers = new HashMap<>();

  SeasonTrips() {
    headers.forEach(header -> numbers.put(header, numbers.size()));
  }

  private static List<String> headers(List<SeasonTrip> trips) {
    Set<String> headers = new LinkedHashSet<>();
    trips.forEach(trip -> headers.addAll(trip.channelHeaders()));
    return List.copyOf(headers);
  }

  @Override
  public String name() {
    return "demo season";
  }

  @Override
  public List<String> headers() {
    return headers;
  }

  @Override
  public int count() {
    return trips.size();
  }

  @Override
  public void tell(int trip, SampleSink sink) {
    trips
        .get(trip)
        .drive(
            new SeasonSink() {
              @Override
              public void sample(String channelHeader, long timeMicros, double value) {
                Integer number = numbers.get(channelHeader);
                if (number == null) {
                  throw new IllegalStateException("A header that nobody announced");
                }
                sink.sample(number, timeMicros, value);
              }

              @Override
              public void happened(SeasonEvent event) {
                // Only samples are measured.
              }
            });
  }
}
