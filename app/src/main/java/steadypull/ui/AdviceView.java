package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.animation.FadeTransition;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import javafx.util.Duration;
import steadypull.ui.AdviceFace.Answer;
import steadypull.ui.AdviceFace.Look;

/** The advice line: what to do, what that achieves, and the answers to it. */
final class AdviceView extends Pane {
  private static final double NOTE_GAP = 16;
  private static final Duration FILL = Duration.millis(150);

  private final Words words;
  private final boolean moves;
  private final Region before = new Region();
  private final FadeTransition fill = new FadeTransition(FILL, before);
  private final GlyphView glyph = new GlyphView();
  private final Text action = TextRow.text("action");
  private final Text reason = TextRow.text("reason");
  private final Text note = TextRow.text("note");
  private final TextRow actionRow = new TextRow(TextRow.Anchor.LEFT).add(action, 0);
  private final TextRow reasonRow = new TextRow(TextRow.Anchor.LEFT).add(reason, 0);
  private final TextRow noteRow = new TextRow(TextRow.Anchor.RIGHT).add(note, 0);
  private final PressButton gotIt;
  private final PressButton snooze;
  private final PressButton show;

  /**
   * Builds the line.
   *
   * @param moves whether a change of level may take its moment
   */
  AdviceView(Words words, DriveActions actions, boolean moves) {
    this.words = words;
    this.moves = moves;
    gotIt = new PressButton(Icon.CHECK, words.say("advice.gotIt"), actions.gotIt()).solid();
    snooze = new PressButton(Icon.BELL_CLOCK, words.say("advice.snooze"), actions.snooze());
    show = new PressButton(Icon.BELL_CLOCK, words.say("advice.show"), actions.show());
    gotIt.setId("got-it");
    snooze.setId("snooze");
    show.setId("show");
    setManaged(false);
    setAccessibleRole(AccessibleRole.TEXT);
    setFocusTraversable(false);
    resizeRelocate(
        DriveGeometry.MARGIN,
        DriveGeometry.ADVICE_TOP,
        DriveGeometry.ADVICE_WIDTH,
        DriveGeometry.ADVICE_HEIGHT);
    glyph.place(
        DriveGeometry.ADVICE_GLYPH, DriveGeometry.ADVICE_GLYPH, DriveGeometry.ADVICE_GLYPH_SCALE);
    actionRow.at(DriveGeometry.ADVICE_TEXT_LEFT, DriveGeometry.ADVICE_ACTION_BASELINE);
    reasonRow.at(DriveGeometry.ADVICE_TEXT_LEFT, DriveGeometry.ADVICE_REASON_BASELINE);
    before.setManaged(false);
    before.resize(DriveGeometry.ADVICE_WIDTH, DriveGeometry.ADVICE_HEIGHT);
    before.setVisible(false);
    fill.setFromValue(1);
    fill.setToValue(0);
    fill.setOnFinished(_ -> before.setVisible(false));
    getChildren().addAll(before, glyph, actionRow, reasonRow, noteRow, gotIt, snooze, show);
    note.layoutBoundsProperty().addListener(_ -> requestLayout());
  }

  void show(AdviceFace face) {
    fillAnew(face.look());
    glyph.show(face.glyph());
    action.setText(face.action());
    reason.setText(face.reason());
    note.setText(face.note());
    gotIt.setVisible(face.buttons().contains(Answer.GOT_IT));
    snooze.setVisible(face.buttons().contains(Answer.SNOOZE));
    show.setVisible(face.buttons().contains(Answer.SHOW));
    snooze.note(face.snooze());
    setAccessibleText(words.say("advice.help", face.action(), face.reason()));
    requestLayout();
  }

  /** The new fill comes at once under the old one, which leaves within 150 ms. */
  private void fillAnew(Look look) {
    List<String> styles = List.of("advice", look.styleClass());
    if (!getStyleClass().equals(styles)) {
      before.getStyleClass().setAll(getStyleClass());
      getStyleClass().setAll(styles);
      before.setVisible(moves && !before.getStyleClass().isEmpty());
      if (before.isVisible()) {
        fill.playFromStart();
      }
    }
  }

  @Override
  protected void layoutChildren() {
    double right = placeButtons();
    noteRow.at(right, DriveGeometry.ADVICE_NOTE_BASELINE);
    double noteWidth = note.getText().isEmpty() ? 0 : noteRow.naturalWidth() + NOTE_GAP;
    actionRow.within(right - noteWidth - DriveGeometry.ADVICE_TEXT_LEFT);
    reasonRow.within(right - DriveGeometry.ADVICE_TEXT_LEFT);
  }

  private double placeButtons() {
    double right = DriveGeometry.ADVICE_RIGHT;
    List<PressButton> shown = new ArrayList<>(List.of(snooze, show, gotIt));
    shown.removeIf(button -> !button.isVisible());
    for (PressButton button : shown) {
      right -= DriveGeometry.ADVICE_BUTTON_WIDTH;
      button.place(
          right,
          DriveGeometry.ADVICE_BUTTON_TOP,
          DriveGeometry.ADVICE_BUTTON_WIDTH,
          DriveGeometry.ADVICE_BUTTON_HEIGHT);
      right -= DriveGeometry.ADVICE_BUTTON_GAP;
    }
    return shown.isEmpty() ? right - DriveGeometry.ADVICE_BUTTON_GAP : right - NOTE_GAP / 4;
  }
}
