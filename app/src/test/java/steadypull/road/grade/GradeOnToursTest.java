package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.road.TourDrive;

/**
 * The grade against the truth, on every tour of the country. Nothing was fitted to these drives:
 * what the filter believes of roads and receivers was estimated on others.
 */
class GradeOnToursTest {
  private static final Set<Sensor> NONE = EnumSet.noneOf(Sensor.class);

  /** The bars of the product are 0.6 % live and 0.4 % afterwards. */
  @Test
  void torqueAndReceiverTogetherKeepTheBarsWithRoomToSpare() {
    TourGrades usual = TourGrades.of(1, 1, ReceiverQuality.usual(), NONE, TourDrive.Errors.USUAL);

    assertThat(usual.live().made()).isLessThan(0.54);
    assertThat(usual.afterwards().made()).isLessThan(0.3);
  }

  @Test
  void inHardWorldsTheyKeepThemToo() {
    TourGrades hard = TourGrades.of(2, 2, ReceiverQuality.usual(), NONE, TourDrive.Errors.HARD);

    assertThat(hard.live().made()).isLessThan(0.6);
    assertThat(hard.afterwards().made()).isLessThan(0.35);
  }

  @Test
  void togetherTheyAreBetterThanEachAlone() {
    TourDrive.Errors usual = TourDrive.Errors.USUAL;
    TourGrades together = TourGrades.of(1, 1, ReceiverQuality.usual(), NONE, usual);
    TourGrades receiver =
        TourGrades.of(1, 1, ReceiverQuality.usual(), EnumSet.of(Sensor.DELIVERED_TORQUE), usual);
    TourGrades torque = TourGrades.of(1, 1, blind(), NONE, usual);

    assertThat(together.live().made())
        .isLessThan(Math.min(receiver.live().made(), torque.live().made()));
    assertThat(together.afterwards().made())
        .isLessThan(Math.min(receiver.afterwards().made(), torque.afterwards().made()));
  }

  /**
   * A smoother that claimed to know less or more than it does would mislead the memory of roads.
   * The filter cannot know in which world it drives, so that both kinds count alike.
   */
  @Test
  void theErrorThatIsToldIsTheErrorThatIsMade() {
    TourGrades usual = TourGrades.of(3, 4, ReceiverQuality.usual(), NONE, TourDrive.Errors.USUAL);
    TourGrades hard = TourGrades.of(3, 4, ReceiverQuality.usual(), NONE, TourDrive.Errors.HARD);

    assertThat(usual.with(hard).each())
        .allSatisfy(
            (what, errors) -> {
              assertThat(errors.toldByMade()).as(what).isBetween(0.85, 1.25);
              assertThat(errors.withinTwo()).as(what).isBetween(0.93, 0.996);
            });
    assertThat(Stream.of(usual, hard).flatMap(world -> world.each().values().stream()))
        .allSatisfy(errors -> assertThat(errors.toldByMade()).isBetween(0.85, 1.35));
  }

  /** Without a receiver the grade carries what mass and wind are wrong, and says so. */
  @Test
  void withoutAReceiverMassAndWindAreMostOfTheError() {
    double right = TourGrades.of(1, 1, blind(), NONE, TourDrive.Errors.NONE).pulling().made();
    double usual = TourGrades.of(1, 2, blind(), NONE, TourDrive.Errors.USUAL).pulling().made();
    double hard = TourGrades.of(1, 1, blind(), NONE, TourDrive.Errors.HARD).pulling().made();

    assertThat(right).isLessThan(0.55).isLessThan(usual).isLessThan(hard * 0.6);
  }

  /** The receiver shows a turn a few seconds late; looking back, it is where it was driven. */
  @Test
  void afterwardsATurnIsWhereItWasDriven() {
    TourDrive drive = TourDrive.of(Country.larkmoor().turnedAround(), 6);
    List<GradeEstimate> smoothed = GradeSmoother.smooth(TourGrades.seconds(drive));
    int turn = 0;
    while (drive.truth().get(turn + 1).place().gradePercent()
        > drive.truth().get(turn).place().gradePercent() - 5) {
      turn++;
    }
    for (int i = turn - 5; i <= turn + 6; i++) {
      if (i < turn || i > turn + 1) {
        assertThat(smoothed.get(i).grade() * 100)
            .isCloseTo(drive.truth().get(i).place().gradePercent(), within(1.5));
      }
    }
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

  /** A long trip is smoothed in pieces of 1500 s; where they meet nothing shows. */
  @Test
  void piecesOfALongTripMeetWithoutAStep() {
    List<RoadSecond> twice = twice(TourDrive.of(Country.larkmoor().overTheHarrow(), 4));
    List<GradeEstimate> whole = GradeSmoother.smooth(twice);
    List<GradeEstimate> part = GradeSmoother.smooth(twice.subList(1000, twice.size()));

    assertThat(twice).hasSizeGreaterThan(1900);
    for (int i = 1400; i < 1600; i++) {
      assertThat(part.get(i - 1000).grade()).isCloseTo(whole.get(i).grade(), within(0.003));
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

    assertThat(looked)
        .hasSizeGreaterThan(200)
        .isEqualTo(TourGrades.seconds(drive).subList(0, looked.size()));
  }

  private static List<RoadSecond> twice(TourDrive drive) {
    List<RoadSecond> once = TourGrades.seconds(drive);
    List<RoadSecond> twice = new ArrayList<>(once);
    for (RoadSecond second : once) {
      twice.add(
          new RoadSecond(
              second.seconds() + once.getLast().seconds(),
              second.metresPerSecond(),
              second.traction(),
              second.altitudeMetres(),
              second.turn()));
    }
    return twice;
  }

  static ReceiverQuality blind() {
    return new ReceiverQuality(0, 0, 60, 0, 3600, 60, 0);
  }

  /** Per cent, live. */
  private static List<Double> grades(TourDrive drive, List<Sample> samples) {
    List<Double> grades = new ArrayList<>();
    TourGrades.play(
        drive,
        samples,
        channels -> grades.add(channels.gradeEstimate().orElseThrow().grade() * 100));
    return grades;
  }
}
