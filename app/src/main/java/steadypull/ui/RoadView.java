package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import steadypull.ui.TextRow.Anchor;

/** The texts of the road strip; its profile is drawn underneath by {@link PlotView}. */
final class RoadView extends Pane {
  private final Text speed = TextRow.text("speed");
  private final Text speedUnit = TextRow.text("speed-unit");
  private final Text place = TextRow.text("place");
  private final Text ahead = TextRow.text("second");
  private final Text origin = TextRow.text("second");
  private final Text gradeAhead = TextRow.text("bold");
  private final Text grade = TextRow.text("readout");
  private final Text power = TextRow.text("readout");
  private final Text powerUnit = TextRow.text("second");
  private final Text gear = TextRow.text("readout");
  private final Text outside = TextRow.text("readout");
  private final Text outsideUnit = TextRow.text("second");
  private final TextRow originRow = new TextRow(Anchor.LEFT).add(origin, 0);
  private final TextRow gradeRow = new TextRow(Anchor.CENTRE).add(gradeAhead, 0);

  private OptionalDouble crossing = OptionalDouble.empty();
  private Optional<RoadScale> scale = Optional.empty();

  RoadView(Words words) {
    getStyleClass().add("road");
    setManaged(false);
    setAccessibleRole(AccessibleRole.TEXT);
    getChildren()
        .addAll(
            new TextRow(Anchor.LEFT)
                .add(speed, 0)
                .add(speedUnit, 13)
                .at(DriveGeometry.ROAD_SPEED_LEFT, DriveGeometry.ROAD_SPEED_BASELINE),
            stateLine(place, DriveGeometry.ROAD_PLACE_BASELINE),
            stateLine(ahead, DriveGeometry.ROAD_PLACE_NOTE_BASELINE),
            gradeRow,
            originRow.within(DriveGeometry.ROAD_ORIGIN_WIDTH),
            readout(words, "road.grade", Anchor.LEFT, DriveGeometry.TEXT_LEFT)
                .add(grade, 10)
                .add(unit("%"), 9),
            readout(words, "road.power", Anchor.CENTRE, DriveGeometry.ROAD_POWER_CENTRE)
                .add(power, 11)
                .add(powerUnit, 9),
            readout(words, "road.gear", Anchor.CENTRE, DriveGeometry.ROAD_GEAR_CENTRE)
                .add(gear, 11),
            readout(words, "road.outside", Anchor.RIGHT, DriveGeometry.STATE_RIGHT)
                .add(outside, 11)
                .add(outsideUnit, 9));
  }

  void show(RoadFace face) {
    speed.setText(face.speed());
    speedUnit.setText(face.speedUnit());
    gradeAhead.setText(face.gradeAhead());
    origin.setText(face.origin());
    place.setText(face.place());
    ahead.setText(face.ahead());
    grade.setText(face.grade());
    power.setText(face.power());
    powerUnit.setText(face.powerUnit());
    gear.setText(face.gear());
    outside.setText(face.outside());
    outsideUnit.setText(face.outsideUnit());
    for (Text figure : List.of(speed, grade, power, gear, outside)) {
      figure.getStyleClass().remove("unknown");
      if (figure.getText().equals(RoadFace.UNKNOWN)) {
        figure.getStyleClass().add("unknown");
      }
    }
    RoadScale shown = RoadScale.of(face);
    scale = Optional.of(shown);
    originRow.at(DriveGeometry.ROAD_ORIGIN_LEFT, shown.originBaseline());
    placeGrade();
    setAccessibleText(face.spoken());
  }

  /** Keeps the label of the road ahead clear of the mark of a crossing. */
  void keepClear(OptionalDouble secondsToCrossing) {
    crossing = secondsToCrossing;
    placeGrade();
  }

  private void placeGrade() {
    double x = RoadScale.labelX(crossing);
    scale.ifPresent(known -> gradeRow.at(x, known.labelBaseline(x)));
  }

  private static Text unit(String sign) {
    Text text = TextRow.text("second");
    text.setText(sign);
    return text;
  }

  private static TextRow readout(Words words, String key, Anchor anchor, double x) {
    Text label = TextRow.text("second");
    label.setText(words.say(key));
    return new TextRow(anchor).add(label, 0).at(x, DriveGeometry.ROAD_READOUT_BASELINE);
  }

  private static TextRow stateLine(Text text, double baseline) {
    return new TextRow(Anchor.LEFT)
        .add(text, 0)
        .at(DriveGeometry.STATE_LEFT, baseline)
        .within(DriveGeometry.STATE_RIGHT - DriveGeometry.STATE_LEFT);
  }
}
