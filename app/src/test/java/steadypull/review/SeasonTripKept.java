package steadypull.review;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.demo.season.Season;
import steadypull.demo.season.SeasonEvent;
import steadypull.demo.season.SeasonSink;
import steadypull.demo.season.SeasonTrip;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/** A trip of the demo season, kept in a library. */
public final class SeasonTripKept {
  private static final List<SeasonTrip> TRIPS = Season.of(1).trips();

  private SeasonTripKept() {}

  /** Keeps the first trip of a day, and gives its id. */
  public static String in(Path folder, String day) throws Exception {
    return in(folder, day, _ -> true);
  }

  /** Keeps some of its samples. */
  public static String in(Path folder, String day, Predicate<Sample> kept) throws Exception {
    SeasonTrip trip =
        TRIPS.stream()
            .filter(each -> each.start().atOffset(each.offset()).toString().startsWith(day))
            .findFirst()
            .orElseThrow();
    Vehicle vehicle = VehicleJson.read(trip.vehicleFile(), "the season's vehicle");
    Vehicle fitted = vehicle.withRig(VehicleJson.readRig(trip.rigFile(), "the season's rig"));
    List<Sample> samples = new ArrayList<>();
    long end = trip.drive(new Collecting(samples));
    samples.removeIf(kept.negate());
    try (TripLibrary library = TripLibrary.open(folder)) {
      return library.keep(
          new NewTrip(fitted, trip.start(), trip.label(), "demo:season", "0.0-test"), samples, end);
    }
  }

  private record Collecting(List<Sample> samples, Map<String, Channel> channels)
      implements SeasonSink {
    Collecting(List<Sample> samples) {
      this(samples, new HashMap<>());
    }

    @Override
    public void sample(String channelHeader, long timeMicros, double value) {
      Channel channel =
          channels.computeIfAbsent(channelHeader, header -> Channel.ofHeader(header).orElseThrow());
      samples.add(new Sample(channel, timeMicros, value));
    }

    @Override
    public void happened(SeasonEvent event) {
      // climbs come from samples alone
    }
  }
}
