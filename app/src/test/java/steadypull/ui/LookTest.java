package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import javafx.scene.Scene;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.StripState;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;

/** Places, scales and light: what the eye relies on to compare strips. */
class LookTest {
  private static final Offset<Double> ROUNDING = Offset.offset(1e-9);

  @ParameterizedTest
  @CsvSource({"06:59, NIGHT", "07:00, DAY", "18:59, DAY", "19:00, NIGHT", "00:00, NIGHT"})
  void clockTellsDayFromNight(LocalTime time, Light light) {
    assertThat(LightChoice.BY_CLOCK.at(time)).isEqualTo(light);
    assertThat(LightChoice.DAY.at(time)).isEqualTo(Light.DAY);
    assertThat(LightChoice.NIGHT.at(time)).isEqualTo(Light.NIGHT);
  }

  @Test
  void calmStripsShareTheRoomEqually() {
    List<StripSlot> slots = StripSlot.slots(4, false);
    assertThat(slots).extracting(StripSlot::height).containsOnly(99.5);
    assertThat(slots.getLast().top() + slots.getLast().height())
        .isEqualTo(DriveGeometry.STRIPS_BOTTOM);
  }

  @Test
  void leadingStripTakesWhatTheOthersLeave() {
    assertThat(StripSlot.slots(4, true))
        .extracting(StripSlot::height)
        .containsExactly(206.0, 64.0, 64.0, 64.0);
    assertThat(StripSlot.slots(2, true)).extracting(StripSlot::height).containsExactly(342.0, 64.0);
    assertThat(StripSlot.slots(0, false)).isEmpty();
  }

  // Equal gaps under different limits must look equal: the window is the same for every channel.
  @Test
  void sameHeadroomHasTheSamePlaceInEveryStrip() {
    StripSlot slot = StripSlot.slots(4, false).getFirst();
    StripScale coolant = new StripScale(slot, 112);
    StripScale exhaust = new StripScale(slot, 720);
    assertThat(coolant.y(112 - 15)).isCloseTo(exhaust.y(720 - 15), ROUNDING);
    assertThat(coolant.limitY() - slot.top()).isCloseTo(slot.height() / 6, ROUNDING);
  }

  @Test
  void valueUnderTheWindowRidesItsEdge() {
    StripSlot slot = new StripSlot(100, 60, StripSlot.Form.SMALL);
    StripScale scale = new StripScale(slot, 100);
    assertThat(scale.y(-30)).isEqualTo(scale.y(20)).isEqualTo(158);
    assertThat(scale.y(400)).isEqualTo(102);
  }

  @Test
  void anyWindowShowsTheWholeScreenInItsShape() {
    Fx.run(
        () -> {
          Words words = new Words(Locale.ENGLISH);
          FittedPane root = new FittedPane();
          AboutScreen screen = new AboutScreen(words, () -> {});
          root.show(screen);
          new Scene(root, 2560, 1000);
          root.resize(2560, 1000);
          root.layout();
          assertThat(screen.root().getLocalToSceneTransform().getMxx()).isEqualTo(1.25);
          assertThat(screen.root().getLocalToSceneTransform().getMyy()).isEqualTo(1.25);
          assertThat(screen.root().getLayoutX()).isEqualTo((2560 - 1600) / 2.0);
          assertThat(screen.root().getLayoutY()).isZero();
        });
  }

  @Test
  void nameOfTheBundledTypefaceIsTheOneInTheStyleSheets() {
    Fx.run(
        () -> {
          Typeface.load();
          assertThat(Font.font(Typeface.FAMILY, FontWeight.BOLD, 20).getName())
              .isEqualTo("B612 Bold");
        });
  }

  // The label must stay readable where the trace comes down through its usual place.
  @Test
  void labelOfTheLimitStandsUnderATraceThatRunsThroughIt() {
    StripSlot slot = StripSlot.slots(4, false).getFirst();
    StripState low = Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(97).now(97).to(97).build();
    StripState near = Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(123).now(123).to(120).build();
    double usual = StripLabels.limit(low, slot, 90).baseline();
    double moved = StripLabels.limit(near, slot, 90).baseline();
    assertThat(usual).isCloseTo(new StripScale(slot, 130).limitY() + 22, ROUNDING);
    assertThat(moved - 18).isGreaterThan(new StripScale(slot, 130).y(123));
  }

  @Test
  void gradeAheadStandsBesideTheMarkOfACrossing() {
    double usual = RoadScale.labelX(OptionalDouble.empty());
    assertThat(RoadScale.labelX(OptionalDouble.of(20))).isEqualTo(usual);
    for (double seconds = 20; seconds <= 180; seconds += 2) {
      double label = RoadScale.labelX(OptionalDouble.of(seconds));
      assertThat(Math.abs(label - StripScale.x(seconds))).isGreaterThanOrEqualTo(44);
    }
  }

  // A word on a line that runs through it cannot be read.
  @Test
  void whereTheGroundIsKnownFromStandsClearOfItsLine() {
    RoadWords roads =
        new RoadWords(
            new Words(Locale.ENGLISH), new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC));
    for (DriveSnapshot moment :
        List.of(Moments.beforeAClimb(), Moments.beforeAFork(), Moments.downASteepHill())) {
      RoadScale scale = RoadScale.of(roads.face(moment));
      double left = DriveGeometry.ROAD_ORIGIN_LEFT;
      for (double x = left; x < left + DriveGeometry.ROAD_ORIGIN_WIDTH; x += 4) {
        double line = scale.aheadY(StripScale.seconds(x));
        assertThat(line)
            .matches(y -> y < scale.originBaseline() - 16 || y > scale.originBaseline() + 4);
      }
    }
  }

  // In the middle of the chart nobody would know what it belongs to.
  @Test
  void labelOfTheLimitStandsBeforeNowWhereTheTraceHasLeftTheCeiling() {
    StripSlot slot = StripSlot.slots(4, true).getFirst();
    StripState fallen =
        Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
            .from(107)
            .now(70)
            .to(60)
            .level(StripState.StripLevel.MAY_REACH)
            .build();
    StripLabels.Spot spot = StripLabels.limit(fallen, slot, 90);
    assertThat(spot.left() + 90).isLessThan(DriveGeometry.NOW);
    assertThat(spot.left()).isGreaterThan(DriveGeometry.CHART_LEFT + 100);
    assertThat(spot.baseline()).isLessThan(new StripScale(slot, 105).limitY());
  }

  // A line of text is ten px a letter here; the rules are the same for any type.
  private static NamePlace named(String name, double valueWidth) {
    return NamePlace.of(
        StripSlot.slots(4, false).getFirst(),
        name,
        true,
        valueWidth,
        text -> text.lines().mapToInt(String::length).max().orElse(0) * 10.0);
  }

  @Test
  void eachNameStandsBesideItsValueIfItCan() {
    assertThat(named("Coolant", 93)).extracting(NamePlace::text).isEqualTo("Coolant");
    assertThat(named("Gearbox oil", 93).text()).isEqualTo("Gearbox oil");
    assertThat(named("Gearbox oil", 132).text()).isEqualTo("Gearbox\noil");
    assertThat(named("Charge air in", 132).text()).isEqualTo("Charge\nair in");
    assertThat(named("Getriebeöle", 132).text()).isEqualTo("Getriebeöle");
  }

  @Test
  void nameTooLongForTwoLinesStandsAboveItsValue() {
    assertThat(named("Gearbox oil", 132).value()).isEqualTo(named("Coolant", 93).value());
    assertThat(named("Getriebeöle", 132).value()).isGreaterThan(named("Coolant", 93).value());
    assertThat(named("Getriebeöle", 132).room()).isEqualTo(226);
  }

  // On the dark amber of a wide fan nobody could read it.
  @Test
  void labelOfTheDashedLineStandsUnderTheWholeFan() {
    StripSlot slot = StripSlot.slots(4, true).getFirst();
    StripState strip =
        Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).from(80).now(92).to(100).eased(97).build();
    Fan fan = ((ChannelForecast.Ready) strip.forecast()).fan();
    double foot = new StripScale(slot, 105).y(fan.at(0, CourseWords.HORIZON_SECONDS));
    assertThat(StripLabels.easedBaseline(strip, slot, 156) - 18).isGreaterThan(foot);
  }

  @Test
  void labelOfTheDashedLineStandsBesideTheDropAndNotAcrossIt() {
    Strips strip = Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).from(80).now(92).to(108).eased(91);
    double free = StripLabels.easedRight(strip.build(), 156);
    StripState late = strip.reaches(146).build();
    double drop = StripScale.x(146);
    assertThat(free).isEqualTo(816);
    assertThat(StripLabels.easedRight(late, 156)).isLessThan(drop);
    StripState early = strip.reaches(40).build();
    assertThat(StripLabels.easedRight(early, 156)).isEqualTo(816);
  }
}
