package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.TourDrive;

/** The grade against the truth, on every tour of the country, with masses some per cent wrong. */
class GradeOnToursTest {
  private static final double FIRST_SECONDS = 60;
  private static final Set<Sensor> NONE = EnumSet.noneOf(Sensor.class);

  /** Root mean square errors in per cent of grade. */
  private record Errors(double live, double afterwards) {}

  @Test
  void torqueAndReceiverTogetherKeepTheBars() {
    Errors errors = errors(ReceiverQuality.usual(), NONE);

    // the bars of the product: 0.6 % live, 0.4 % afterwards
    assertThat(errors.live()).isLessThan(0.6);
    assertThat(errors.afterwards()).isLessThan(0.4);
  }

  @Test
  void togetherTheyAreBetterThanEachAlone() {
    Errors together = errors(ReceiverQuality.usual(), NONE);
    Errors receiver = errors(ReceiverQuality.usual(), EnumSet.of(Sensor.DELIVERED_TORQUE));
    Errors torque = errors(blind(), NONE);

    assertThat(together.live()).isLessThan(Math.min(receiver.live(), torque.live()));
    assertThat(together.afterwards())
        .isLessThan(Math.min(receiver.afterwards(), torque.afterwards()));
  }

  /**
   * A smoother that claimed to know less or more than it does would mislead the memory of roads.
   */
  @Test
  void theErrorThatIsToldIsTheErrorThatIsMade() {
    List<Double> shares = new ArrayList<>();
    for (Tour tour : Country.larkmoor().tours()) {
      TourDrive drive = TourDrive.of(tour, 5);
      List<GradeEstimate> smoothed = GradeSmoother.smooth(seconds(drive));
      for (int i = 0; i < smoothed.size(); i++) {
        double error = smoothed.get(i).grade() - drive.truth().get(i).place().gradePercent() / 100;
        shares.add(Math.abs(error) / smoothed.get(i).error());
      }
    }
    double within = shares.stream().filter(share -> share < 2).count() / (double) shares.size();
    assertThat(within).isBetween(0.9, 0.9995);
  }

  /** Steps of 1 kPa are 83 m of altitude; to take them for one would be worse than nothing. */
  @Test
  void theBarometerIsNoAltitude() {
    TourDrive drive = TourDrive.of(Country.larkmoor().overTheHarrow(), 2, blind(), NONE);
    List<Double> heard = grades(drive, drive.samples());
    List<Double> stuck =
        grades(
            drive,
            drive.samples().stream()
                .map(
                    sample ->
                        sample.channel().equals(Channels.BAROMETRIC_PRESSURE)
                            ? new Sample(sample.channel(), sample.timeMicros(), 96)
                            : sample)
                .toList());
    for (int i = 0; i < heard.size(); i++) {
      // only the air's density differs, by 5 % of the drag
      assertThat(heard.get(i)).isCloseTo(stuck.get(i), within(0.4));
    }
  }

  /** A long trip is smoothed piece by piece; where pieces meet nothing shows. */
  @Test
  void piecesOfALongTripMeetWithoutAStep() {
    List<RoadSecond> once = seconds(TourDrive.of(Country.larkmoor().overTheHarrow(), 4));
    List<GradeEstimate> whole = GradeSmoother.smooth(once);
    List<RoadSecond> late = once.subList(700, once.size());
    List<GradeEstimate> part = GradeSmoother.smooth(late);

    for (int i = 300; i < part.size(); i++) {
      assertThat(part.get(i).grade()).isCloseTo(whole.get(i + 700).grade(), within(0.002));
    }
  }

  /** What is learned of roads rests on the seconds alone; they are the same without the rest. */
  @Test
  void aLookTellsTheSameSecondsAsATick() {
    TourDrive drive = TourDrive.of(Country.larkmoor().upTheQuarryBends(), 2);
    List<RoadSecond> looked = new ArrayList<>();
    DerivedChannels channels = new DerivedChannels(drive.vehicle());
    long next = 1_000_000;
    for (Sample sample : drive.samples()) {
      for (; next <= sample.timeMicros(); next += 1_000_000) {
        channels.look(next).ifPresent(looked::add);
      }
      channels.accept(sample);
    }

    assertThat(looked).hasSizeGreaterThan(200).isEqualTo(seconds(drive).subList(0, looked.size()));
  }

  private static ReceiverQuality blind() {
    return new ReceiverQuality(0, 0, 60, 0, 3600, 60, 0);
  }

  private static Errors errors(ReceiverQuality quality, Set<Sensor> silent) {
    double live = 0;
    double afterwards = 0;
    int count = 0;
    for (Tour tour : Country.larkmoor().tours()) {
      TourDrive drive = TourDrive.of(tour, 1, quality, silent);
      List<RoadSecond> seconds = seconds(drive);
      List<GradeEstimate> smoothed = GradeSmoother.smooth(seconds);
      GradeFilter filter = new GradeFilter();
      for (int i = 0; i < seconds.size(); i++) {
        filter.accept(seconds.get(i));
        if (seconds.get(i).seconds() > FIRST_SECONDS) {
          double truth = drive.truth().get(i).place().gradePercent();
          live += square(filter.estimate().orElseThrow().grade() * 100 - truth);
          afterwards += square(smoothed.get(i).grade() * 100 - truth);
          count++;
        }
      }
    }
    return new Errors(Math.sqrt(live / count), Math.sqrt(afterwards / count));
  }

  private static List<RoadSecond> seconds(TourDrive drive) {
    List<RoadSecond> seconds = new ArrayList<>();
    play(drive, drive.samples(), channels -> seconds.add(channels.second().orElseThrow()));
    return seconds;
  }

  /** Per cent, live. */
  private static List<Double> grades(TourDrive drive, List<Sample> samples) {
    List<Double> grades = new ArrayList<>();
    play(
        drive,
        samples,
        channels -> grades.add(channels.gradeEstimate().orElseThrow().grade() * 100));
    return grades;
  }

  private static void play(
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

  private static double square(double value) {
    return value * value;
  }
}
