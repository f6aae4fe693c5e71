package steadypull.road.grade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;

/**
 * Errors of the grade on all tours of the country, the first minute left out. Immutable.
 *
 * @param pulling live, while the engine pulled
 * @param braking live, otherwise
 * @param pullingAfterwards the same seconds, smoothed
 * @param brakingAfterwards the same seconds, smoothed
 */
record TourGrades(
    GradeErrors pulling,
    GradeErrors braking,
    GradeErrors pullingAfterwards,
    GradeErrors brakingAfterwards) {
  private static final double FIRST_SECONDS = 60;
  private static final TourGrades NONE =
      new TourGrades(GradeErrors.NONE, GradeErrors.NONE, GradeErrors.NONE, GradeErrors.NONE);

  /** Drives all tours once for each seed from one to another. */
  static TourGrades of(
      long firstSeed,
      long lastSeed,
      ReceiverQuality quality,
      Set<Sensor> silent,
      TourDrive.Errors errors) {
    TourGrades all = NONE;
    for (long seed = firstSeed; seed <= lastSeed; seed++) {
      for (Tour tour : Country.larkmoor().tours()) {
        all = all.with(TourDrive.of(tour, seed, quality, silent, errors));
      }
    }
    return all;
  }

  /** The same along a route whose elevations err by 2.5 m over 300 m. */
  static TourGrades alongRoutes(
      long firstSeed,
      long lastSeed,
      ReceiverQuality quality,
      Set<Sensor> silent,
      TourDrive.Errors errors) {
    TourGrades all = NONE;
    for (long seed = firstSeed; seed <= lastSeed; seed++) {
      for (Tour tour : Country.larkmoor().tours()) {
        TourDrive drive = TourDrive.of(tour, seed, quality, silent, errors);
        all = all.with(drive, RoutedSeconds.of(drive, tour, seed + 1000));
      }
    }
    return all;
  }

  GradeErrors live() {
    return pulling.with(braking);
  }

  GradeErrors afterwards() {
    return pullingAfterwards.with(brakingAfterwards);
  }

  /** All kinds of driving by name, live and afterwards. */
  Map<String, GradeErrors> each() {
    Map<String, GradeErrors> each = new LinkedHashMap<>();
    each.put("engine pulling, live", pulling);
    each.put("brakes on, live", braking);
    each.put("all, live", live());
    each.put("engine pulling, afterwards", pullingAfterwards);
    each.put("brakes on, afterwards", brakingAfterwards);
    each.put("all, afterwards", afterwards());
    return each;
  }

  TourGrades with(TourGrades other) {
    return new TourGrades(
        pulling.with(other.pulling),
        braking.with(other.braking),
        pullingAfterwards.with(other.pullingAfterwards),
        brakingAfterwards.with(other.brakingAfterwards));
  }

  private TourGrades with(TourDrive drive) {
    return with(drive, seconds(drive));
  }

  private TourGrades with(TourDrive drive, List<RoadSecond> seconds) {
    List<GradeEstimate> smoothed = GradeSmoother.smooth(seconds);
    GradeFilter filter = new GradeFilter();
    TourGrades all = this;
    for (int i = 0; i < seconds.size(); i++) {
      filter.accept(seconds.get(i));
      if (seconds.get(i).seconds() > FIRST_SECONDS) {
        double truth = drive.truth().get(i).place().gradePercent() / 100;
        all =
            all.with(
                seconds.get(i).traction().filter(Traction::isPulling).isPresent(),
                filter.estimate().orElseThrow(),
                smoothed.get(i),
                truth);
      }
    }
    return all;
  }

  private TourGrades with(
      boolean isPulling, GradeEstimate live, GradeEstimate smoothed, double truth) {
    GradeErrors now = GradeErrors.NONE.with(live.grade() - truth, live.error());
    GradeErrors later = GradeErrors.NONE.with(smoothed.grade() - truth, smoothed.error());
    return with(
        isPulling
            ? new TourGrades(now, GradeErrors.NONE, later, GradeErrors.NONE)
            : new TourGrades(GradeErrors.NONE, now, GradeErrors.NONE, later));
  }

  static List<RoadSecond> seconds(TourDrive drive) {
    List<RoadSecond> seconds = new ArrayList<>();
    play(drive, drive.samples(), channels -> seconds.add(channels.second().orElseThrow()));
    return seconds;
  }

  static void play(
      TourDrive drive, List<Sample> samples, Consumer<DerivedChannels> afterEachSecond) {
    DerivedChannels channels = new DerivedChannels(drive.vehicle());
    int next = 0;
    for (TourDrive.Truth truth : drive.truth()) {
      long micros = (long) (truth.seconds() * 1e6);
      while (next < samples.size() && samples.get(next).timeMicros() < micros) {
        channels.accept(samples.get(next++));
      }
      channels.tick(micros);
      afterEachSecond.accept(channels);
    }
  }
}
