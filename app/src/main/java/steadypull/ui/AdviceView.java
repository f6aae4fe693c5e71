package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import steadypull.ui.AdviceFace.Answer;

/** The advice line: what to do, what that achieves, and the answers to it. */
final class AdviceView extends Pane {
  private static final double NOTE_GAP = 16;

  private final Words words;
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

  AdviceView(Words words, DriveActions actions) {
    this.words = words;
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
    getChildren().addAll(glyph, actionRow, reasonRow, noteRow, gotIt, snooze, show);
    note.layoutBoundsProperty().addListener(_ -> requestLayout());
  }

  void show(AdviceFace face) {
    getStyleClass().setAll("advice", face.look().styleClass());
    glyph.show(face.glyph());
    action.setText(face.action());
    reason.setText(face.reason());
    note.setText(face.note());
    gotIt.setVisible(face.buttons().contains(Answer.GOT_IT));
    snooze.setVisible(face.buttons().contains(Answer.SNOOZE));
    show.setVisible(face.buttons().contains(Answer.SHOW));
    setAccessibleText(words.say("advice.help", face.action(), face.reason()));
    requestLayout();
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
