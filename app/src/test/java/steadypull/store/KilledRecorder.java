package steadypull.store;

import java.nio.file.Path;
import java.time.Instant;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * A program of its own that records until it is killed and prints how far each commit came: the
 * number of its last sample and a full stop, by which a line shows that it is whole.
 */
final class KilledRecorder {
  private KilledRecorder() {}

  public static void main(String[] arguments) throws LibraryException {
    int samplesPerCommit = Integer.parseInt(arguments[1]);
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
            Instant.parse("2026-07-15T17:45:12Z"),
            "",
            "test",
            "0.1.0");
    try (TripLibrary library = TripLibrary.open(Path.of(arguments[0]));
        TripRecorder recorder = library.begin(trip)) {
      System.out.println(recorder.tripId());
      for (long number = 0; number < Long.MAX_VALUE; number++) {
        recorder.append(sample(number));
        if ((number + 1) % samplesPerCommit == 0) {
          recorder.commit(sample(number).timeMicros());
          System.out.println(number + ".");
        }
      }
    }
  }

  /** The sample of that number, the same in every process. */
  static Sample sample(long number) {
    return new Sample(Channels.ENGINE_COOLANT_TEMP, number * 20_000, Math.sin((double) number));
  }
}
