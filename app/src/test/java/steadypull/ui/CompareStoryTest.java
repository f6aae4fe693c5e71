package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.report.ComparisonDesk;
import steadypull.report.ComparisonWords;
import steadypull.report.InventedComparison;
import steadypull.store.TripSummary;

/** What a person does on the screen that compares runs. */
class CompareStoryTest {
  private final CompareMoments.Desk answers =
      new CompareMoments.Desk(InventedComparison.proven().build());

  private static CompareScreen shown(CompareMoments moment) {
    return Fx.call(() -> laidOut(moment.screen(Locale.ENGLISH, UnitSystem.METRIC)));
  }

  private static CompareScreen laidOut(CompareScreen screen) {
    FittedPane root = new FittedPane();
    root.show(screen);
    new Scene(root);
    root.applyCss();
    root.layout();
    return screen;
  }

  private static List<String> texts(Pane root) {
    return Fx.call(
        () ->
            Fx.visible(root).stream()
                .filter(Text.class::isInstance)
                .map(node -> ((Text) node).getText())
                .toList());
  }

  private static ButtonBase button(CompareScreen screen, String id) {
    return (ButtonBase)
        Fx.call(
            () ->
                Fx.visible(screen.root()).stream()
                    .filter(node -> id.equals(node.getId()))
                    .findFirst()
                    .orElseThrow());
  }

  private static void press(CompareScreen screen, String id) {
    ButtonBase button = button(screen, id);
    Fx.run(button::fire);
    Fx.settle();
  }

  @Test
  void nothingChosenSaysWhatToDoAndOffersNoReport() {
    CompareScreen screen = shown(CompareMoments.NOTHING_CHOSEN);

    assertThat(texts(screen.root()))
        .anySatisfy(text -> assertThat(text).startsWith("Nothing is chosen yet. Press Runs"));
    assertThat(button(screen, "compare-report").isDisabled()).isTrue();
    assertThat(button(screen, "compare-channel").isDisabled()).isTrue();
  }

  @Test
  void verdictValuesAndSplitStandTogether() {
    assertThat(texts(shown(CompareMoments.PROVEN).root()))
        .contains("Before and after: Charge coolant, Van 2")
        .contains("Proven: charge coolant settles 12.0° cooler at the same load (9.8° to 14.1°).")
        .contains("117 kW before, 119 kW after")
        .contains("15 s", "30 s", "60 s", "90 s", "120 s", "settled")
        .contains("28.7°", "24.6°", "4.0°", "62.0°", "50.0°", "12.0°")
        .contains("8.3° (7.1° to 9.4°) lasts", "2.9° (1.6° to 4.2°) delays")
        .contains("97°", "5° over", "85°", "7° under", "2:27", "never");
  }

  @Test
  void openVerdictSaysWhatProofAsksFor() {
    assertThat(texts(shown(CompareMoments.OPEN).root()))
        .contains(
            "For proof: 3 runs a side (1 and 1 so far), 2 days a side or before-after-before, a"
                + " range without zero.");
  }

  @Test
  void whatCannotBeComparedIsSaidWithEveryRunLeftOut() {
    CompareScreen screen = shown(CompareMoments.NOT_COMPARABLE);

    assertThat(texts(screen.root()))
        .contains("The after runs never held 380 N.m for 60 s. Drive one, or choose another load.")
        .anySatisfy(text -> assertThat(text).contains("20260513", "began 9 degC hotter"))
        .doesNotContain("Cooler by");
  }

  @Test
  void tripsArePutOnEitherSideAndTakenBack() {
    CompareModel model = Fx.call(CompareModel::new);
    var trip = CompareMoments.trip(3, "baseline", "");
    Fx.run(
        () -> {
          model.toggle(trip, Side.BEFORE);
          assertThat(model.sideOf(trip)).contains(Side.BEFORE);
          model.toggle(trip, Side.AFTER);
          assertThat(model.sideOf(trip)).contains(Side.AFTER);
          assertThat(model.isComplete()).isFalse();
          model.toggle(trip, Side.AFTER);
          assertThat(model.sideOf(trip)).isEmpty();
        });
  }

  // Reading takes seconds; who has chosen otherwise meanwhile must not see the older answer.
  @Test
  void answerThatIsNoLongerWantedIsDropped() {
    CompareModel model = Fx.call(CompareModel::new);
    Fx.run(
        () -> {
          long first = model.ask();
          long second = model.ask();
          model.answer(first, new CompareModel.Shown.Refused("old"));
          assertThat(model.shownProperty().get()).isEqualTo(new CompareModel.Shown.Nothing());
          model.answer(second, new CompareModel.Shown.Refused("new"));
          assertThat(model.shownProperty().get()).isEqualTo(new CompareModel.Shown.Refused("new"));
        });
  }

  @Test
  void anotherTemperatureIsComparedWhenItIsChosen() {
    List<Channel> asked = new ArrayList<>();
    ComparisonDesk listening =
        new ComparisonDesk() {
          @Override
          public List<TripSummary> trips() {
            return answers.trips();
          }

          @Override
          public Comparison compare(List<Chosen> chosen, Channel channel, Locale locale) {
            asked.add(channel);
            return answers.answer();
          }

          @Override
          public void write(ComparisonWords words, QuantityFormat quantities, Path file) {}
        };
    CompareScreen screen =
        Fx.call(
            () -> {
              CompareDesk desk =
                  new CompareDesk(listening, new Words(Locale.ENGLISH), Runnable::run);
              desk.look();
              List<TripSummary> trips = desk.model().tripsProperty().get();
              desk.model().toggle(trips.get(3), Side.BEFORE);
              desk.model().toggle(trips.get(0), Side.AFTER);
              return laidOut(
                  new CompareScreen(
                      new Words(Locale.ENGLISH),
                      new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC),
                      desk,
                      new CompareScreen.Ways(_ -> Optional.empty(), () -> {})));
            });
    press(screen, "compare-runs");
    press(screen, "compare-show");
    press(screen, "compare-channel");
    press(screen, "compare-engine_oil_temp");

    assertThat(asked).containsExactly(Channels.CHARGE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP);
  }

  @Test
  void reportIsWrittenWhereThePersonSaysAndToldSo() {
    CompareScreen screen =
        Fx.call(
            () ->
                laidOut(CompareMoments.PROVEN.screen(Locale.ENGLISH, UnitSystem.METRIC, answers)));

    press(screen, "compare-report");

    assertThat(answers.written())
        .extracting(Object::toString)
        .containsExactly("before-and-after.pdf");
    assertThat(texts(screen.root())).contains("Wrote before-and-after.pdf.");
  }

  // Hollow before, solid after: the middle of the one is the ground's, of the other the ink's.
  @Test
  void linesOfBothSidesAreToldApartWithoutColour() {
    CompareScreen screen = shown(CompareMoments.PROVEN);
    WritableImage image = Fx.call(() -> screen.root().getScene().snapshot(null));
    Palette palette = Palette.of(Light.DAY);
    Comparison found = InventedComparison.proven().build();
    var words =
        new ComparisonWords(
            found, Locale.ENGLISH, new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC));
    var scale = ComparePainter.temperatureScale(words);
    int second = 100;
    int x = (int) ComparePainter.x(second, 181);
    double before = scale.y(found.beforeCourse().middle()[second]);
    double after = scale.y(found.afterCourse().middle()[second]);

    assertThat(near(image, x, before, palette.colour(Token.SURFACE))).isTrue();
    assertThat(near(image, x, after, palette.colour(Token.INK))).isTrue();
    assertThat(near(image, x, after, palette.colour(Token.SURFACE))).isFalse();
  }

  private static boolean near(WritableImage image, int x, double y, Color wanted) {
    Color found = image.getPixelReader().getColor(x, (int) Math.round(y));
    return Math.abs(found.getBrightness() - wanted.getBrightness()) < 0.1;
  }

  @Test
  void listOfTripsOpensAndTheLastButtonLeadsBack() {
    List<String> ways = new ArrayList<>();
    CompareScreen screen =
        Fx.call(
            () ->
                laidOut(
                    new CompareScreen(
                        new Words(Locale.ENGLISH),
                        new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC),
                        new CompareDesk(answers, new Words(Locale.ENGLISH), Runnable::run),
                        new CompareScreen.Ways(_ -> Optional.empty(), () -> ways.add("menu")))));
    press(screen, "compare-runs");
    Node list =
        Fx.call(
            () ->
                Fx.visible(screen.root()).stream()
                    .filter(node -> "compare-trips".equals(node.getId()))
                    .findFirst()
                    .orElseThrow());
    assertThat(list).isNotNull();
    press(screen, "compare-menu");

    assertThat(ways).containsExactly("menu");
  }
}
