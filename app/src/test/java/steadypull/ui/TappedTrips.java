package steadypull.ui;

import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.AddedTrip;
import steadypull.store.NewTrip;
import steadypull.store.TripAdder;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

/** Two trips of 10 h and a newer one of 20 min, each with 20 limited channels at 5 Hz. */
final class TappedTrips {
  private static final Instant FIRST = Instant.parse("2026-07-15T17:45:12Z");
  private static final int CHANNELS = 20;
  private static final long STEP_MICROS = 200_000;
  private static final int LONG_STEPS = 10 * 3_600 * 5;
  private static final int SHORT_STEPS = 20 * 60 * 5;

  private TappedTrips() {}

  static String add(TripAdder adder) {
    add(adder, FIRST, LONG_STEPS);
    add(adder, FIRST.plusSeconds(86_400), LONG_STEPS);
    return add(adder, FIRST.plusSeconds(2 * 86_400), SHORT_STEPS);
  }

  private static String add(TripAdder adder, Instant start, int steps) {
    List<Channel> channels =
        IntStream.range(0, CHANNELS)
            .mapToObj(number -> new Channel("channel_" + (char) ('a' + number), "degC"))
            .toList();
    Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
    for (Channel channel : channels) {
      vehicle =
          vehicle.withLimit(new Limit(channel, 120, new Provenance(Provenance.Kind.OWNER, "")));
    }
    SplittableRandom random = new SplittableRandom(start.getEpochSecond());
    AddedTrip trip = adder.begin(new NewTrip(vehicle, start, "", "bench", "0.1.0"));
    for (int step = 0; step < steps; step++) {
      for (int number = 0; number < CHANNELS; number++) {
        long jitter = number % 4 == 0 ? random.nextLong(4_000) : 0;
        double value = Math.rint(80 + 20 * Math.sin(step / (500.0 + number)) + random.nextInt(3));
        trip.append(
            new Sample(channels.get(number), step * STEP_MICROS + number * 5_000L + jitter, value));
      }
    }
    return trip.seal(steps * STEP_MICROS);
  }
}
