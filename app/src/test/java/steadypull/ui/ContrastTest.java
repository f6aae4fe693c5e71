package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.paint.Color;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;

/**
 * Contrast of the tokens, computed by the definition of contrast ratio and relative luminance in
 * W3C, Web Content Accessibility Guidelines 2.2, 2023, glossary.
 */
class ContrastTest {
  // Stated figures of our own design page; 0.05 for its rounding to one decimal.
  @ParameterizedTest
  @CsvSource({
    "DAY, INK, GROUND, 13.9",
    "DAY, INK, SURFACE, 15.8",
    "DAY, INK2, GROUND, 7.5",
    "DAY, INK3, GROUND, 4.9",
    "DAY, ON_RED, RED, 7.1",
    "DAY, RED_INK, SURFACE, 7.1",
    "DAY, ON_AMBER, AMBER, 8.6",
    "DAY, AMBER_INK, SURFACE, 7.0",
    "DAY, GREEN, SURFACE, 5.1",
    "DAY, GREEN_INK, GROUND, 5.6",
    "NIGHT, INK, GROUND, 14.0",
    "NIGHT, INK, SURFACE, 12.9",
    "NIGHT, INK2, SURFACE, 8.0",
    "NIGHT, INK3, SURFACE, 5.2",
    "NIGHT, ON_AMBER, AMBER, 7.3",
    "NIGHT, AMBER_INK, SURFACE, 9.4",
    "NIGHT, RED_INK, SURFACE, 7.0",
    "NIGHT, GREEN, SURFACE, 5.3"
  })
  void statedContrastIsTheMeasuredOne(Light light, Token upper, Token lower, double stated) {
    assertThat(contrast(light, upper, lower)).isCloseTo(stated, Offset.offset(0.051));
  }

  // Success criteria 1.4.6 (7:1, primary values), 1.4.3 (4.5:1, other text) and 1.4.11 (3:1,
  // outlines
  // and marks), same source.
  @ParameterizedTest
  @CsvSource({
    "INK, GROUND, 7",
    "INK, SURFACE, 7",
    "INK2, GROUND, 7",
    "INK2, SURFACE, 7",
    "ON_RED, RED, 7",
    "ON_AMBER, AMBER, 7",
    "RED_INK, SURFACE, 7",
    "AMBER_INK, SURFACE, 4.5",
    "AMBER_INK, GROUND, 4.5",
    "INK3, GROUND, 4.5",
    "INK3, SURFACE, 4.5",
    "GREEN_INK, GROUND, 4.5",
    "GREEN, SURFACE, 3",
    "INK2, TERRAIN, 4.5",
    "EDGE, GROUND, 3"
  })
  void everyTextKeepsItsLeastContrastByDayAndNight(Token upper, Token lower, double least) {
    for (Light light : Light.values()) {
      assertThat(contrast(light, upper, lower)).as(light.name()).isGreaterThanOrEqualTo(least);
    }
  }

  // Black on white is 21:1; #767676 on white is 4.54:1 (same source, understanding 1.4.3).
  @ParameterizedTest
  @CsvSource({"#000000, 21.0", "#767676, 4.54"})
  void knownPairsHaveTheirKnownContrast(String colour, double known) {
    assertThat(contrast(Color.web(colour), Color.WHITE)).isCloseTo(known, Offset.offset(0.005));
  }

  // Same source, 1.4.3; on the nodes themselves, so that no rule of a style sheet undoes another.
  @Test
  void everyCaptionCanBeReadOnItsButtonInEveryState() {
    for (Light light : Light.values()) {
      Moments.all()
          .forEach(
              (name, moment) ->
                  Fx.run(
                      () ->
                          buttons(moment, light)
                              .forEach(button -> assertCaption(name + " " + light, button))));
    }
  }

  private static List<PressButton> buttons(DriveSnapshot moment, Light light) {
    DriveModel model =
        new DriveModel(
            new Words(Locale.ENGLISH),
            new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC),
            ZoneOffset.UTC,
            System::nanoTime);
    model.show(moment);
    Runnable nothing = () -> {};
    FittedPane root = new FittedPane();
    root.setLight(light);
    root.show(
        new DriveScreen(
            new Words(Locale.ENGLISH),
            model,
            new DriveActions(nothing, nothing, nothing, nothing, nothing, nothing),
            false));
    new Scene(root);
    root.applyCss();
    root.layout();
    return Fx.visible(root).stream()
        .filter(PressButton.class::isInstance)
        .map(PressButton.class::cast)
        .toList();
  }

  private static void assertCaption(String where, PressButton button) {
    Label caption = (Label) button.lookup(".caption");
    Color ground = (Color) button.getBackground().getFills().getLast().getFill();
    assertThat(contrast((Color) caption.getTextFill(), ground))
        .as(where + " " + button.getId())
        .isGreaterThanOrEqualTo(4.5);
  }

  private static double contrast(Light light, Token upper, Token lower) {
    Palette palette = Palette.of(light);
    return contrast(palette.colour(upper), palette.colour(lower));
  }

  private static double contrast(Color one, Color other) {
    double brighter = Math.max(luminance(one), luminance(other));
    double darker = Math.min(luminance(one), luminance(other));
    return (brighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
  }
}
