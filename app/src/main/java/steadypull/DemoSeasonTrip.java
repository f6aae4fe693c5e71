package steadypull;

import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.cli.DemoDesk;
import steadypull.demo.season.SeasonEvent;
import steadypull.demo.season.SeasonSink;
import steadypull.demo.season.SeasonTrip;
import steadypull.drive.TripStory;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;

/** A trip of the demo season in the terms of the library. Immutable. */
final class DemoSeasonTrip implements DemoDesk.SeasonTrip {
  private static final String ENGINE_UNIT = "7E8";

  private final SeasonTrip trip;

  DemoSeasonTrip(SeasonTrip trip) {
    this.trip = trip;
  }

  @Override
  public String vehicleFile() {
    return trip.vehicleFile();
  }

  @Override
  public String rigFile() {
    return trip.rigFile();
  }

  @Override
  public OffsetDateTime start() {
    return trip.start().atOffset(trip.offset());
  }

  @Override
  public TripDetails details() {
    return new TripDetails(
        trip.label(),
        trip.note(),
        trip.tags(),
        trip.fitted(),
        trip.outside(),
        trip.outsideCelsius());
  }

  @Override
  public String protocol() {
    return trip.protocol();
  }

  @Override
  public long drive(Consumer<TripEntry> entries) {
    tell(entries, connected(0));
    return trip.drive(new Telling(entries));
  }

  private TripEvent connected(long timeMicros) {
    int channels = trip.channelHeaders().size();
    return TripStory.connected(timeMicros, "demo adapter, " + trip.protocol(), channels);
  }

  private static void tell(Consumer<TripEntry> entries, TripEvent event) {
    entries.accept(new TripEntry.OfEvent(event));
  }

  /** Turns what the season tells into entries. One thread. */
  private final class Telling implements SeasonSink {
    private final Map<String, Channel> channels = new HashMap<>();
    private final Consumer<TripEntry> entries;

    Telling(Consumer<TripEntry> entries) {
      this.entries = entries;
    }

    @Override
    public void sample(String channelHeader, long timeMicros, double value) {
      Channel channel =
          channels.computeIfAbsent(channelHeader, header -> Channel.ofHeader(header).orElseThrow());
      entries.accept(new TripEntry.OfSample(new Sample(channel, timeMicros, value)));
    }

    @Override
    public void happened(SeasonEvent event) {
      switch (event) {
        case SeasonEvent.Mark(long time, String text) -> tell(entries, TripStory.mark(time, text));
        case SeasonEvent.LinkLost(long time) ->
            tell(entries, TripStory.lost(time, "the adapter no longer answers"));
        case SeasonEvent.LinkBack(long time) -> tell(entries, connected(time));
        case SeasonEvent.EngineStopped _ -> {
          // The samples tell it: engine speed 0.
        }
        case SeasonEvent.CodesTold told -> {
          long time = told.timeMicros();
          tell(entries, TripStory.codes(time, "stored", told.stored(), ENGINE_UNIT));
          tell(entries, TripStory.codes(time, "pending", told.pending(), ENGINE_UNIT));
        }
      }
    }
  }
}
