package steadypull.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.ExportEnd;
import steadypull.drive.ExportTarget;
import steadypull.drive.TripDesk;
import steadypull.drive.TripWindow;
import steadypull.store.LostPart;
import steadypull.store.TripDamage;
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
  CLOSER,
  EXPORTING,
  EXPORT_STOPPED,
  EXPORTED,
  EXPORTED_WITH_LOSS,
  DAMAGED,
  NO_HITS;

  private static final Path FILE = Path.of("exports", "20260119T020200Z-aaaa.csv");

  /** The screen at that moment; FX thread only. What is thrown away for it comes back. */
  Screen screen(TripDesk trips, Words words, UnitSystem units) throws Exception {
    QuantityFormat quantities = new QuantityFormat(words.locale(), units);
    ToldTrips held = new ToldTrips(trips, damage(trips), exportEnd(trips));
    TripExports exports = new TripExports(held, words, this == EXPORTING ? _ -> {} : Runnable::run);
    TripsDesk desk = new TripsDesk(held, words, Runnable::run, exports);
    TripsScreen screen =
        new TripsScreen(
            words,
            quantities,
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
      case CLOSER -> {
        TripWindow whole =
            TripWindow.whole(desk.model().chosenProperty().get().orElseThrow().trip().summary());
        desk.show(whole.magnified(6, 0.7, whole));
      }
      case EXPORTING -> {
        exports.begin(ended(trips), ExportTarget.whole(FILE), quantities);
        exports.reach(43);
      }
      case EXPORT_STOPPED, EXPORTED, EXPORTED_WITH_LOSS ->
          exports.begin(ended(trips), ExportTarget.whole(FILE), quantities);
      case DAMAGED -> {}
      case THROWN_AWAY -> {
        throwAway(trips, desk);
        press(screen.root(), "trips-thrown-away");
      }
    }
    return screen;
  }

  private TripDamage damage(TripDesk trips) throws Exception {
    String id = ended(trips).id();
    return switch (this) {
      case DAMAGED, EXPORTED_WITH_LOSS ->
          new TripDamage(
              id,
              List.of(
                  new LostPart(
                      id,
                      false,
                      85.2,
                      OptionalDouble.of(141),
                      4_096,
                      List.of(Channels.ENGINE_COOLANT_TEMP)),
                  new LostPart(id, false, 300, OptionalDouble.of(421.7), 32_768, List.of())),
              true);
      case SHEET,
          FIELDS,
          FIELD_REFUSED,
          VEHICLES,
          TAGS,
          THROWN,
          THROWN_AWAY,
          CLOSER,
          EXPORTING,
          EXPORT_STOPPED,
          EXPORTED,
          NO_HITS ->
          new TripDamage(id, List.of(), false);
    };
  }

  private ExportEnd exportEnd(TripDesk trips) throws Exception {
    return this == EXPORT_STOPPED ? new ExportEnd.Stopped() : new ExportEnd.Written(damage(trips));
  }

  private static TripSummary ended(TripDesk trips) throws Exception {
    return trips.all().stream().filter(TripSummary::sealed).findFirst().orElseThrow();
  }

  private static void throwAway(TripDesk trips, TripsDesk desk) throws Exception {
    TripSummary ended = ended(trips);
    desk.throwAway(ended);
    trips.bringBack(ended.id());
  }

  private static void press(Parent root, String id) {
    Fx.visible(root).stream()
        .filter(node -> id.equals(node.getId()))
        .forEach(node -> ((Button) node).fire());
  }
}
