package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.layout.Pane;
import steadypull.compare.Comparison;
import steadypull.compare.Verdict;
import steadypull.report.ComparisonWords;

/** The verdict on top: what is claimed, and what it means or what proof still asks for. */
final class CompareVerdict extends Pane {
  private static final double GLYPH_LEFT = 36;
  private static final double GLYPH_TOP = 24;
  private static final double GLYPH_SCALE = 1.1;
  private static final double ROOM = 1016;

  private final GlyphView glyph = new GlyphView();
  private final Pane text = new Pane();

  CompareVerdict() {
    setManaged(false);
    setPickOnBounds(false);
    glyph.place(GLYPH_LEFT, CompareGeometry.VERDICT_TOP + GLYPH_TOP, GLYPH_SCALE);
    getChildren()
        .addAll(
            Parked.panel(
                CompareGeometry.LEFT,
                CompareGeometry.VERDICT_TOP,
                CompareGeometry.PANEL_WIDTH,
                CompareGeometry.VERDICT_HEIGHT),
            glyph,
            text);
  }

  void show(ComparisonWords comparison) {
    List<String> more =
        Stream.of(comparison.missingShort(), comparison.onOneDay())
            .flatMap(Optional::stream)
            .toList();
    glyph.show(glyph(comparison.comparison()));
    text.getChildren()
        .setAll(
            Parked.line(
                    comparison.claim(),
                    CompareGeometry.VERDICT_TEXT_LEFT,
                    CompareGeometry.CLAIM_BASELINE,
                    "claim")
                .within(ROOM));
    if (!more.isEmpty()) {
      text.getChildren()
          .add(
              Parked.line(
                      more.getFirst(),
                      CompareGeometry.VERDICT_TEXT_LEFT,
                      CompareGeometry.MORE_BASELINE,
                      "claim-more")
                  .within(ROOM));
    }
  }

  /** Bars apart only where something is proven to run cooler, or later. */
  private static Glyph glyph(Comparison comparison) {
    Verdict strongest =
        comparison.verdict() == Verdict.NOT_PROVEN
            ? comparison.delayVerdict()
            : comparison.verdict();
    boolean isHotter =
        comparison.verdict() != Verdict.NOT_PROVEN
            && comparison.settledGain().filter(gain -> gain.middle() < 0).isPresent();
    return switch (strongest) {
      case PROVEN -> isHotter ? Glyph.CAUTION : Glyph.HOLDS;
      case LIKELY -> Glyph.MAY_REACH;
      case NOT_PROVEN -> Glyph.UNKNOWN;
    };
  }
}
