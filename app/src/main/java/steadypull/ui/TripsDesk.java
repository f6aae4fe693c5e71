package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.value.ChangeListener;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveException;
import steadypull.drive.ExportTarget;
import steadypull.drive.TripDesk;
import steadypull.drive.TripPicture;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.Listed;
import steadypull.ui.TripsModel.Told;

/**
 * Does what is asked for on one visit to the trips screen: the library is read and written on the
 * executor, what comes of it is shown on the FX thread. FX thread only.
 */
final class TripsDesk {
  private final TripDesk desk;
  private final Words words;
  private final Executor library;
  private final TripLook trip;
  private final TripExports exports;
  private final TripsModel model = new TripsModel();
  private final ChangeListener<Told> exported = (_, _, _) -> hearOfExports();

  private String wantedId = "";

  /**
   * A desk for one visit.
   *
   * @param library runs one thing after the other
   * @param exports outlive the visit
   */
  TripsDesk(TripDesk desk, Words words, Executor library, TripExports exports) {
    this.desk = desk;
    this.words = words;
    this.library = library;
    this.exports = exports;
    this.trip = new TripLook(desk, library, (int) TripsGeometry.INNER_WIDTH, new Looked());
    exports.toldProperty().addListener(exported);
  }

  /** Ends the visit; what is being exported goes on. */
  void leave() {
    exports.toldProperty().removeListener(exported);
    trip.close();
  }

  private void hearOfExports() {
    exports.takeUnheard().ifPresent(model::tell);
  }

  TripExports exports() {
    return exports;
  }

  TripsModel model() {
    return model;
  }

  /** Looks for other trips; if the chosen one is not among them, another is chosen. */
  void look(TripQuery query) {
    look(query, true);
  }

  private void look(TripQuery query, boolean choosesAnother) {
    long look = model.look(query);
    library.execute(
        () -> {
          // Somebody who types has asked anew already.
          if (model.isWanted(look)) {
            Listed answer = ask(query);
            List<TripSummary> away = desk.thrownAway();
            FxThread.run(() -> show(look, answer, away, choosesAnother));
          }
        });
  }

  private Listed ask(TripQuery query) {
    try {
      return new Listed.Found(TripHits.ask(desk, query));
    } catch (DriveException refused) {
      return new Listed.Refused(String.valueOf(refused.getMessage()));
    }
  }

  private void show(long look, Listed answer, List<TripSummary> away, boolean choosesAnother) {
    if (!model.isWanted(look)) {
      return;
    }
    int before = placeOfChosen();
    model.thrownAway(away);
    model.listed(look, answer);
    if (choosesAnother && answer instanceof Listed.Found(TripHits hits) && !hits.holds(wantedId)) {
      hits.near(before).ifPresentOrElse(this::choose, this::chooseNone);
    }
  }

  /** Where the chosen trip stood, so that its neighbour follows it when it is thrown away. */
  private int placeOfChosen() {
    return model.listedProperty().get() instanceof Listed.Found(TripHits hits)
        ? hits.placeOf(wantedId)
        : 0;
  }

  /** Shows the sheet of a trip. */
  void choose(TripSummary chosen) {
    if (chosen.id().equals(wantedId)) {
      return;
    }
    wantedId = chosen.id();
    long look = trip.begin();
    model.choose(look);
    trip.open(look, chosen.id(), listed());
  }

  private List<TripSummary> listed() {
    return model.listedProperty().get() instanceof Listed.Found(TripHits hits)
        ? hits.trips()
        : List.of();
  }

  /** Draws a window of the chosen trip. */
  void show(TripWindow window) {
    trip.show(window);
  }

  /** Hears of the chosen trip. */
  private final class Looked implements TripLook.Listener {
    @Override
    public void opened(long look, WholeTrip whole) {
      FxThread.run(
          () -> {
            model.chosen(look, whole);
            hearOfExports();
          });
    }

    @Override
    public void drawn(long look, TripPicture whole) {
      FxThread.run(() -> model.chosen(look, shown -> shown.withPicture(whole)));
    }

    @Override
    public void shown(long look, TripPicture window) {
      FxThread.run(() -> model.chosen(look, shown -> shown.withShown(window)));
    }

    @Override
    public void examined(long look, TripDamage damage) {
      FxThread.run(() -> model.chosen(look, shown -> shown.withDamage(damage)));
    }

    @Override
    public void refused(long look, DriveException refused) {
      FxThread.run(() -> model.tell(refusal(refused)));
    }
  }

  private void chooseNone() {
    wantedId = "";
    trip.close();
    model.chooseNone();
  }

  /** Keeps what was typed of a trip; what could not be read of it is told. */
  void keep(WholeTrip trip, TripSaidReader.Reading reading, QuantityFormat quantities) {
    library.execute(
        () -> {
          try {
            WholeTrip before = desk.trip(trip.summary().id());
            WholeTrip now = desk.describe(trip.summary().id(), reading.details(), reading.rig());
            String kept = TripSaidChanges.of(before, now, words, quantities);
            FxThread.run(() -> kept(now, kept, reading.refusal()));
          } catch (DriveException refused) {
            FxThread.run(() -> model.tell(refusal(refused)));
          }
        });
  }

  private void kept(WholeTrip now, String changed, Optional<String> refused) {
    model.changed(now);
    if (!changed.isEmpty()) {
      model.tell(new Told.Done(words.say("trips.kept", changed)));
      // Somebody is still typing: the sheet stays though its trip may no longer fit the search.
      look(model.queryProperty().get(), false);
    }
    refused.ifPresent(message -> model.tell(new Told.Refused(message)));
  }

  /** Throws a trip away until it is brought back or the program closes. */
  void throwAway(TripSummary trip) {
    change(() -> desk.throwAway(trip.id()), () -> model.thrown(trip));
  }

  /** Brings a trip back and shows it. */
  void bringBack(TripSummary trip) {
    change(() -> desk.bringBack(trip.id()), () -> choose(trip));
  }

  private void change(Change change, Runnable after) {
    library.execute(
        () -> {
          try {
            change.make();
            FxThread.run(
                () -> {
                  after.run();
                  look(model.queryProperty().get());
                });
          } catch (DriveException refused) {
            FxThread.run(() -> model.tell(refusal(refused)));
          }
        });
  }

  /** Writes a trip to a file, unless another is being written. */
  void export(TripSummary written, ExportTarget target, QuantityFormat quantities) {
    exports.begin(written, target, quantities);
  }

  private static Told refusal(DriveException refused) {
    return new Told.Refused(String.valueOf(refused.getMessage()));
  }

  private interface Change {
    void make() throws DriveException;
  }
}
