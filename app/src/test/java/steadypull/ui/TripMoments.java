package steadypull.ui;

import java.util.Optional;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.TripDesk;
import steadypull.store.TripSummary;

/** What the trips screen may show. */
enum TripMoments {
  SHEET,
  FIELDS,
  FIELD_REFUSED,
  VEHICLES,
  TAGS,
  THROWN,
  THROWN_AWAY,
  NO_HITS;

  /** The screen at that moment; FX thread only. What is thrown away for it comes back. */
  Screen screen(TripDesk trips, Words words, UnitSystem units) throws Exception {
    TripsDesk desk = new TripsDesk(trips, words, Runnable::run);
    TripsScreen screen =
        new TripsScreen(
            words,
            new QuantityFormat(words.locale(), units),
            desk,
            new TripsScreen.Ways(false, _ -> Optional.empty(), _ -> {}, () -> {}));
    desk.look(TripQuery.ALL.withText(this == NO_HITS ? "zebra" : ""));
    switch (this) {
      case SHEET, NO_HITS -> {}
      case FIELDS -> screen.toggleEditing();
      case FIELD_REFUSED -> {
        screen.toggleEditing();
        // A refusal of two lines, which must stay clear of field and button.
        desk.model()
            .tell(
                new TripsModel.Told.Refused(
                    words.say(
                        "trips.refused",
                        words.say("trips.field.mass"),
                        "300 kg",
                        "60000 kg",
                        "x")));
      }
      case VEHICLES -> press(screen.root(), "trips-vehicle");
      case TAGS -> press(screen.root(), "trips-tag");
      case THROWN -> throwAway(trips, desk);
      case THROWN_AWAY -> {
        throwAway(trips, desk);
        press(screen.root(), "trips-thrown-away");
      }
    }
    return screen;
  }

  private static void throwAway(TripDesk trips, TripsDesk desk) throws Exception {
    TripSummary ended = trips.all().stream().filter(TripSummary::sealed).findFirst().orElseThrow();
    desk.throwAway(ended);
    trips.bringBack(ended.id());
  }

  private static void press(Parent root, String id) {
    Fx.visible(root).stream()
        .filter(node -> id.equals(node.getId()))
        .forEach(node -> ((Button) node).fire());
  }
}
