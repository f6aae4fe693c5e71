package steadypull.ui;

import java.util.List;
import java.util.Optional;
import javafx.scene.layout.Pane;
import steadypull.store.TripSummary;

/** The buttons at the right of the trips screen: what can be done with the chosen trip. */
final class TripsRail extends Pane {
  private final PressButton play;
  private final PressButton export;
  private final Words words;
  private Optional<TripSummary> chosen = Optional.empty();
  private Optional<TripExports.Running> exporting = Optional.empty();
  private final PressButton throwAway;
  private final PressButton thrownAway;
  private final boolean isDriving;

  /**
   * What the rail can ask for.
   *
   * @param play drives the chosen trip once more
   * @param export writes it to a file, or ends the writing that is under way
   * @param throwAway throws it away
   * @param thrownAway opens the list of what was thrown away
   * @param back leaves the screen
   */
  record Actions(
      Runnable play, Runnable export, Runnable throwAway, Runnable thrownAway, Runnable back) {}

  /**
   * Builds the rail.
   *
   * @param isDriving whether a drive runs, beside which nothing is played back
   */
  TripsRail(Words words, boolean isDriving, Actions actions) {
    this.words = words;
    this.isDriving = isDriving;
    setManaged(false);
    setPickOnBounds(false);
    play = button("trips-play", Icon.PLAY, words.say("trips.play"), actions.play(), 0);
    play.note(words.say("trips.playNote"));
    export = button("trips-export", Icon.OUT, words.say("trips.export"), actions.export(), 1);
    throwAway =
        button("trips-throw-away", Icon.BIN, words.say("trips.throwAway"), actions.throwAway(), 2);
    thrownAway =
        button(
            "trips-thrown-away",
            Icon.AROUND,
            words.say("trips.thrownAway"),
            actions.thrownAway(),
            3);
    button("trips-back", Icon.BACK, words.say("trips.back"), actions.back(), 4);
    show(Optional.empty());
    showThrownAway(List.of());
  }

  private PressButton button(String id, Icon icon, String text, Runnable action, int place) {
    PressButton button = new PressButton(icon, text, action);
    button.setId(id);
    button.getStyleClass().addAll("tight", "rail");
    button.place(
        TripsGeometry.RAIL_LEFT,
        TripsGeometry.RAIL_TOP + place * (TripsGeometry.RAIL_HEIGHT + TripsGeometry.RAIL_GAP),
        TripsGeometry.RAIL_WIDTH,
        TripsGeometry.RAIL_HEIGHT);
    getChildren().add(button);
    return button;
  }

  /** Offers what can be done with a trip; one that is being recorded stays. */
  void show(Optional<TripSummary> changed) {
    chosen = changed;
    boolean hasEnded = chosen.filter(TripSummary::sealed).isPresent();
    play.setDisable(!hasEnded || isDriving);
    throwAway.setDisable(!hasEnded);
    arrangeExport();
  }

  /** Offers to end what is being written, and says how far it has come. */
  void showExport(Optional<TripExports.Running> running) {
    exporting = running;
    arrangeExport();
  }

  private void arrangeExport() {
    if (exporting.isPresent()) {
      export.show(Icon.STOP, words.say("trips.exportStop"));
      export.note(words.say("trips.exportShare", Integer.toString(exporting.get().percent())));
    } else {
      export.show(Icon.OUT, words.say("trips.export"));
    }
    export.setDisable(chosen.isEmpty() && exporting.isEmpty());
  }

  /** Says how many can be brought back. */
  void showThrownAway(List<TripSummary> trips) {
    thrownAway.setDisable(trips.isEmpty());
    thrownAway.note(trips.isEmpty() ? "" : Integer.toString(trips.size()));
  }

  /** Throws the chosen trip away as if the button had been pressed. */
  void pressThrowAway() {
    throwAway.fire();
  }
}
