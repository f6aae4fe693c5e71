package steadypull.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveException;
import steadypull.drive.TripDesk;
import steadypull.drive.WholeTrip;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.ChosenTrip;
import steadypull.ui.TripsModel.Listed;
import steadypull.ui.TripsModel.Told;

/**
 * Does what is asked for on one visit to the trips screen: the library is read and written on the
 * executor, what comes of it is shown on the FX thread. FX thread only.
 */
final class TripsDesk {
  private final TripDesk desk;
  private final Words words;
  private final Executor background;
  private final TripsModel model = new TripsModel();

  private String wantedId = "";

  TripsDesk(TripDesk desk, Words words, Executor background) {
    this.desk = desk;
    this.words = words;
    this.background = background;
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
    background.execute(
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
  void choose(TripSummary trip) {
    if (trip.id().equals(wantedId)) {
      return;
    }
    wantedId = trip.id();
    long choice = model.choose();
    background.execute(() -> read(trip.id(), choice));
  }

  private void read(String tripId, long choice) {
    if (!model.isChosen(choice)) {
      return;
    }
    try {
      WholeTrip whole = desk.trip(tripId);
      FxThread.run(() -> model.chosen(choice, new ChosenTrip(whole, Optional.empty())));
      var picture = desk.picture(tripId, (int) TripsGeometry.INNER_WIDTH);
      FxThread.run(() -> model.chosen(choice, new ChosenTrip(whole, Optional.of(picture))));
    } catch (DriveException refused) {
      FxThread.run(() -> model.tell(refusal(refused)));
    }
  }

  private void chooseNone() {
    wantedId = "";
    model.chooseNone();
  }

  /** Keeps what was typed of a trip; what could not be read of it is told. */
  void keep(WholeTrip trip, TripSaidReader.Reading reading, QuantityFormat quantities) {
    background.execute(
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
    background.execute(
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

  /** Writes a trip to a file. */
  void export(TripSummary trip, Path file) {
    model.tell(new Told.Done(words.say("trips.writing", file.toString())));
    background.execute(
        () -> {
          Told outcome = write(trip, file);
          FxThread.run(() -> model.tell(outcome));
        });
  }

  private Told write(TripSummary trip, Path file) {
    try {
      desk.export(trip.id(), file);
      return new Told.Done(words.say("trips.written", file.toString()));
    } catch (DriveException refused) {
      return refusal(refused);
    }
  }

  private static Told refusal(DriveException refused) {
    return new Told.Refused(String.valueOf(refused.getMessage()));
  }

  private interface Change {
    void make() throws DriveException;
  }
}
