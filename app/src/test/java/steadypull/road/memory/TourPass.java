package steadypull.road.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntConsumer;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.LatestSamples;
import steadypull.road.PositionFix;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.TourDrive;
import steadypull.road.grade.PassTrace;

/**
 * A tour driven once, as the memory of roads learns it and as a sight of the road ahead lives it:
 * another seed is another vehicle's mass, weather, speed and receiver's error.
 *
 * @param passes as the memory learns them once the trip is over
 * @param lived second by second
 */
record TourPass(Tour tour, List<RoadPass> passes, List<Second> lived) {
  private static final Map<Key, TourPass> DRIVEN = new ConcurrentHashMap<>();

  private record Key(String tour, long seed, ReceiverQuality quality) {}

  /**
   * A second of the drive.
   *
   * @param tourMetres where the vehicle truly was
   * @param drivenMetres as its speedometer has it, in this second
   */
  record Second(
      double seconds, double tourMetres, double drivenMetres, Optional<PositionFix> fix) {}

  static TourPass of(Tour tour, long seed) {
    return of(tour, seed, ReceiverQuality.usual());
  }

  static TourPass of(Tour tour, long seed, ReceiverQuality quality) {
    return DRIVEN.computeIfAbsent(
        new Key(tour.name(), seed, quality), _ -> driven(tour, seed, quality));
  }

  private static TourPass driven(Tour tour, long seed, ReceiverQuality quality) {
    TourDrive drive = TourDrive.of(tour, seed, quality, Set.of());
    PassTrace trace = new PassTrace(drive.vehicle());
    drive.samples().forEach(trace::accept);
    return new TourPass(tour, trace.finish(), lived(drive));
  }

  private static List<Second> lived(TourDrive drive) {
    List<Second> lived = new ArrayList<>();
    LatestSamples latest = new LatestSamples();
    int next = 0;
    for (TourDrive.Truth truth : drive.truth()) {
      long micros = (long) (truth.seconds() * 1e6);
      while (next < drive.samples().size() && drive.samples().get(next).timeMicros() < micros) {
        Sample sample = drive.samples().get(next++);
        latest.accept(sample);
      }
      double metres = latest.ever(Channels.VEHICLE_SPEED).orElse(0) / 3.6;
      lived.add(new Second(truth.seconds(), truth.place().metres(), metres, fix(latest, micros)));
    }
    return List.copyOf(lived);
  }

  private static Optional<PositionFix> fix(LatestSamples latest, long micros) {
    OptionalDouble latitude = latest.within(Channels.LATITUDE, micros, 0.9);
    OptionalDouble longitude = latest.within(Channels.LONGITUDE, micros, 0.9);
    return latitude.isPresent() && longitude.isPresent()
        ? Optional.of(
            new PositionFix(
                micros / 1e6,
                latitude.getAsDouble(),
                longitude.getAsDouble(),
                latest.within(Channels.ALTITUDE, micros, 0.9)))
        : Optional.empty();
  }

  /** Lives the drive; the consumer is told the number of each second that is over, from 0. */
  void live(RoadSight sight, IntConsumer afterEachSecond) {
    for (int i = 0; i < lived.size(); i++) {
      Second second = lived.get(i);
      sight.moved(second.seconds(), second.drivenMetres());
      second.fix().ifPresent(sight::fixed);
      afterEachSecond.accept(i);
    }
  }

  /** Where the vehicle truly was at the end of a second, metres of the tour. */
  double metres(int second) {
    return lived.get(second).tourMetres();
  }

  /** The true mean grade between two metres of the tour, a fraction. */
  double meanGrade(double from, double to) {
    double sum = 0;
    int count = 0;
    for (double metres = from + 2.5; metres < to; metres += 5) {
      sum += tour.at(metres).gradePercent() / 100;
      count++;
    }
    return sum / count;
  }
}
