package steadypull.ui;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.report.ComparisonWords;
import steadypull.report.SideDay;
import steadypull.thermal.Belief;

/** Where the gain comes from, and what it means on one day. FX thread only. */
final class CompareSide extends Pane {
  private static final double BAR_HEIGHT = 34;
  private static final double FIRST_BAR = 262;
  private static final double SECOND_BAR = 392;
  private static final double SWATCH_WIDTH = 26;
  private static final double SWATCH_HEIGHT = 18;
  private static final double DAY_LINE = 592;

  private final Words words;
  private final Pane content = new Pane();
  private Optional<ComparisonWords> shown = Optional.empty();
  private Light light = Light.DAY;

  CompareSide(Words words) {
    this.words = words;
    setManaged(false);
    setPickOnBounds(false);
    getChildren()
        .addAll(
            Parked.panel(
                CompareGeometry.SIDE_LEFT,
                CompareGeometry.SIDE_TOP,
                CompareGeometry.SIDE_WIDTH,
                CompareGeometry.SIDE_HEIGHT),
            content);
  }

  void setLight(Light changed) {
    light = changed;
    shown.ifPresent(this::show);
  }

  void show(ComparisonWords comparison) {
    shown = Optional.of(comparison);
    content.getChildren().clear();
    split(comparison);
    day(comparison);
  }

  private void split(ComparisonWords comparison) {
    Comparison found = comparison.comparison();
    line("compare.from", 216, "small", "bold");
    Optional<Belief> lasts = found.lasts();
    Optional<Belief> delays = found.delays();
    if (lasts.isEmpty() || delays.isEmpty() || found.at().isEmpty()) {
      line("compare.noSplit", 250, "small", "second");
      return;
    }
    int seconds = found.at().getLast().seconds();
    text(words.say("compare.at", Integer.toString(seconds)), 250, "small", "second");
    double most =
        Math.max(
            Math.max(0, lasts.get().middle()) + Math.max(0, delays.get().middle()),
            found.settledGain().map(gain -> Math.max(0, gain.middle())).orElse(0.0));
    double unit = most > 0 ? (CompareGeometry.SIDE_ROOM - 30) / most : 0;
    double lasting = Math.max(0, lasts.get().middle()) * unit;
    double delaying = Math.max(0, delays.get().middle()) * unit;
    bar(FIRST_BAR, lasting, delaying);
    text(words.say("compare.lasts", comparison.part(lasts.get())), 320, "small");
    text(words.say("compare.delays", comparison.part(delays.get())), 346, "small");
    found
        .settledGain()
        .ifPresent(
            gain -> {
              line("compare.settledSide", 380, "small", "second");
              bar(SECOND_BAR, Math.max(0, gain.middle()) * unit, 0);
              text(settled(comparison, gain), 450, "small");
            });
    swatch(488, false, "compare.rejection");
    swatch(518, true, "compare.coolant");
  }

  /** Where both directions are possible, their words say enough. */
  private String settled(ComparisonWords comparison, Belief gain) {
    boolean isOpen = gain.low() < 0 && gain.high() > 0;
    return isOpen ? comparison.range(gain) : words.say("compare.lasts", comparison.part(gain));
  }

  private void swatch(double top, boolean isHatched, String key) {
    Canvas swatch = new Canvas(SWATCH_WIDTH, SWATCH_HEIGHT);
    swatch.relocate(CompareGeometry.SIDE_TEXT, top);
    fill(swatch.getGraphicsContext2D(), 0, SWATCH_WIDTH, SWATCH_HEIGHT, isHatched);
    TextRow text = Parked.line(words.say(key), CompareGeometry.SIDE_TEXT + 36, top + 15, "small");
    content.getChildren().addAll(swatch, text.within(CompareGeometry.SIDE_ROOM - 36));
  }

  private void bar(double top, double lasting, double delaying) {
    Canvas bar = new Canvas(CompareGeometry.SIDE_ROOM, BAR_HEIGHT);
    bar.relocate(CompareGeometry.SIDE_TEXT, top);
    GraphicsContext context = bar.getGraphicsContext2D();
    fill(context, 0, lasting, BAR_HEIGHT, false);
    fill(context, lasting, delaying, BAR_HEIGHT, true);
    content.getChildren().add(bar);
  }

  private void fill(
      GraphicsContext context, double left, double wide, double high, boolean isHatched) {
    Pen pen = new Pen(context, Palette.of(light));
    if (wide <= 0) {
      return;
    }
    if (isHatched) {
      pen.within(
          left,
          0,
          wide,
          high,
          () -> {
            pen.stroke(Token.INK, 1.4);
            for (double x = left - high; x < left + wide; x += 7) {
              context.strokeLine(x, high, x + high, 0);
            }
          });
    } else {
      pen.fill(Token.TERRAIN, left, 0, wide, high);
    }
    pen.stroke(isHatched ? Token.INK : Token.TERRAIN_LINE, 2);
    context.strokeRect(left + 1, 1, Math.max(0, wide - 2), high - 2);
  }

  private void day(ComparisonWords comparison) {
    Comparison found = comparison.comparison();
    Optional<SideDay> before = comparison.day(Side.BEFORE);
    Optional<SideDay> after = comparison.day(Side.AFTER);
    if (before.isEmpty() || after.isEmpty() || found.outsideCelsius().isEmpty()) {
      return;
    }
    text(
        words.say(
            "compare.day",
            comparison.quantities().outsideTemperature(found.outsideCelsius().getAsDouble())),
        DAY_LINE - 12,
        "small",
        "second");
    side(CompareGeometry.SIDE_TEXT, "compare.before", before.get());
    side(CompareGeometry.SIDE_SECOND, "compare.after", after.get());
  }

  private void side(double x, String key, SideDay day) {
    double room = CompareGeometry.SIDE_SECOND - CompareGeometry.SIDE_TEXT - 12;
    content
        .getChildren()
        .addAll(
            Parked.line(words.say(key), x, DAY_LINE + 20, "small", "second"),
            Parked.line(day.settles(), x, DAY_LINE + 58, "figure"));
    day.room()
        .ifPresent(
            text -> {
              GlyphView glyph = new GlyphView();
              glyph.show(day.isOver() ? Glyph.DANGER : Glyph.HOLDS);
              glyph.place(x, DAY_LINE + 74, 0.42);
              content
                  .getChildren()
                  .addAll(
                      glyph, Parked.line(text, x + 27, DAY_LINE + 91, "small").within(room - 27));
            });
    day.time()
        .ifPresent(
            text ->
                content
                    .getChildren()
                    .addAll(
                        Parked.line(text, x, DAY_LINE + 134, "figure").within(room),
                        Parked.line(words.say("compare.toLimit"), x, DAY_LINE + 162, "small")
                            .within(room)));
  }

  private void line(String key, double baseline, String... styles) {
    text(words.say(key), baseline, styles);
  }

  private void text(String text, double baseline, String... styles) {
    content
        .getChildren()
        .add(
            Parked.line(text, CompareGeometry.SIDE_TEXT, baseline, styles)
                .within(CompareGeometry.SIDE_ROOM));
  }
}
