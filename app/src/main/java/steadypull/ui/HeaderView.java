package steadypull.ui;

import javafx.scene.Group;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/** The header line: vehicle, recording, link, time. */
final class HeaderView extends Pane {
  private static final int BARS = 5;
  private static final double BAR_STEP = 7;
  private static final double BAR_WIDTH = 4;
  private static final double BAR_HEIGHT = 14;
  private static final double SHORT_BAR = 5;
  private static final double DOT_RADIUS = 7;

  private final Text vehicle = TextRow.text("bold");
  private final Text note = TextRow.text("second");
  private final Text recording = TextRow.text();
  private final Text link = TextRow.text();
  private final Text clock = TextRow.text("bold");
  private final Circle dot = new Circle(DOT_RADIUS);
  private final Group bars = new Group();
  private final TextRow left = new TextRow(TextRow.Anchor.LEFT).add(vehicle, 0).add(note, 17);
  private final TextRow right =
      new TextRow(TextRow.Anchor.RIGHT).add(dot, 0).add(recording, 11).add(bars, 30).add(link, 13);
  private final TextRow time = new TextRow(TextRow.Anchor.RIGHT).add(clock, 0);

  HeaderView() {
    setManaged(false);
    left.at(DriveGeometry.MARGIN, DriveGeometry.HEADER_BASELINE);
    right.at(DriveGeometry.HEADER_LINK_RIGHT, DriveGeometry.HEADER_BASELINE);
    time.at(DriveGeometry.RIGHT, DriveGeometry.HEADER_BASELINE);
    getChildren().addAll(left, right, time);
    for (int bar = 0; bar < BARS; bar++) {
      bars.getChildren().add(new Rectangle(bar * BAR_STEP, 0, BAR_WIDTH, BAR_HEIGHT));
    }
    right.layoutBoundsProperty().addListener(_ -> requestLayout());
    link.layoutBoundsProperty().addListener(_ -> requestLayout());
    recording.layoutBoundsProperty().addListener(_ -> requestLayout());
  }

  void show(HeaderFace face) {
    vehicle.setText(face.vehicle());
    note.setText(face.note());
    recording.setText(face.recording());
    link.setText(face.link());
    clock.setText(face.clock());
    paint(note, face.noteTone(), "second");
    paint(recording, face.recordingTone(), "second");
    paint(dot, face.recordingTone(), "good");
    paint(link, face.linkTone(), "second");
    for (int bar = 0; bar < BARS; bar++) {
      showBar((Rectangle) bars.getChildren().get(bar), isShort(bar, face.shortBars()), face);
    }
  }

  private static boolean isShort(int bar, int shortBars) {
    return shortBars == BARS || (bar < BARS - 1 && bar >= BARS - 1 - shortBars);
  }

  private static void showBar(Rectangle bar, boolean isShort, HeaderFace face) {
    bar.setHeight(isShort ? SHORT_BAR : BAR_HEIGHT);
    bar.setY(isShort ? BAR_HEIGHT - SHORT_BAR : 0);
    paint(bar, face.linkTone(), "good");
  }

  private static void paint(javafx.scene.shape.Shape shape, Tone tone, String calm) {
    shape.getStyleClass().setAll("words", tone == Tone.NEUTRAL ? calm : tone.styleClass());
    if (tone != Tone.NEUTRAL && shape instanceof Text) {
      shape.getStyleClass().add("bold");
    }
  }

  @Override
  protected void layoutChildren() {
    left.within(
        DriveGeometry.HEADER_LINK_RIGHT
            - right.naturalWidth()
            - DriveGeometry.MARGIN
            - DriveGeometry.HEADER_GAP);
  }
}
