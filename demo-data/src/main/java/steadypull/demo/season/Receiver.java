package steadypull.demo.season;

import java.util.Optional;
import java.util.Random;
import steadypull.demo.road.Fix;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Road;
import steadypull.demo.road.SatelliteReceiver;

/** The satellite receiver on board of a trip: reports once a second, a little late. */
final class Receiver {
  private static final long PERIOD_MICROS = 1_000_000;
  private static final long LATE_MICROS = 140_000; // common practice, no source
  private static final double LATE_JITTER_MICROS = 6_000;

  private final Random random;
  private final SatelliteReceiver receiver;
  private long second;
  private long arrival;

  /**
   * A receiver that finds its satellites after a while.
   *
   * @param firstSecond of the trip in which it knows where it is
   */
  Receiver(Random random, int firstSecond) {
    this.random = random;
    receiver = new SatelliteReceiver(ReceiverQuality.usual(), random.nextLong());
    second = firstSecond;
    proceed();
  }

  /** When the next report arrives, microseconds of the trip. */
  long arrival() {
    return arrival;
  }

  /**
   * Says where it believes to be, if it knows.
   *
   * @param place where it is; empty where no satellite is seen
   */
  void report(Optional<Road.Place> place, SeasonSink sink) {
    receiver.next(place).ifPresent(fix -> tell(fix, sink));
  }

  private void tell(Fix fix, SeasonSink sink) {
    sink.sample("latitude[deg]", arrival, fix.latitudeDegrees());
    sink.sample("longitude[deg]", arrival, fix.longitudeDegrees());
    sink.sample("altitude[m]", arrival, fix.altitudeMetres());
  }

  /** Goes on to the next second. */
  void proceed() {
    long late = LATE_MICROS + (long) (Math.abs(random.nextGaussian()) * LATE_JITTER_MICROS);
    arrival = second * PERIOD_MICROS + late;
    second++;
  }
}
