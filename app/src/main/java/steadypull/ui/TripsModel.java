package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.drive.TripPicture;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripSummary;

/**
 * What the trips screen knows. Answers come later than their questions; one that is no longer
 * wanted is dropped. FX thread only, but for {@link #isWanted}.
 */
final class TripsModel {
  private final ReadOnlyObjectWrapper<TripQuery> query = new ReadOnlyObjectWrapper<>(TripQuery.ALL);
  private final ReadOnlyObjectWrapper<Listed> listed =
      new ReadOnlyObjectWrapper<>(new Listed.Looking());
  private final ReadOnlyObjectWrapper<Optional<ChosenTrip>> chosen =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(new Told.Nothing());
  private final ReadOnlyObjectWrapper<List<TripSummary>> thrownAway =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<TripSummary>> lastThrown =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final AtomicLong lookWanted = new AtomicLong();
  private long choiceWanted;

  /**
   * The trip whose sheet is shown.
   *
   * @param picture the whole trip; comes a little later than the words
   * @param shown the window of it that is looked at
   * @param damage what of it cannot be read; comes last
   */
  record ChosenTrip(
      WholeTrip trip,
      Optional<TripPicture> picture,
      Optional<TripPicture> shown,
      Optional<TripDamage> damage) {
    /** The words alone. */
    static ChosenTrip of(WholeTrip trip) {
      return new ChosenTrip(trip, Optional.empty(), Optional.empty(), Optional.empty());
    }

    String id() {
      return trip.summary().id();
    }

    ChosenTrip withTrip(WholeTrip changed) {
      return new ChosenTrip(changed, picture, shown, damage);
    }

    ChosenTrip withPicture(TripPicture whole) {
      return new ChosenTrip(trip, Optional.of(whole), Optional.of(whole), damage);
    }

    ChosenTrip withShown(TripPicture window) {
      return new ChosenTrip(trip, picture, Optional.of(window), damage);
    }

    ChosenTrip withDamage(TripDamage found) {
      return new ChosenTrip(trip, picture, shown, Optional.of(found));
    }
  }

  /** What the list shows. A closed set. */
  sealed interface Listed {
    record Looking() implements Listed {}

    record Found(TripHits hits) implements Listed {}

    /**
     * The library refused.
     *
     * @param message what was tried, found and what to do
     */
    record Refused(String message) implements Listed {}
  }

  /** What was said last of what was done. A closed set. */
  sealed interface Told {
    record Nothing() implements Told {}

    record Done(String words) implements Told {}

    /** Done, but not as it should be. */
    record DoneWithLoss(String message) implements Told {}

    record Refused(String message) implements Told {}
  }

  ReadOnlyObjectProperty<TripQuery> queryProperty() {
    return query.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Listed> listedProperty() {
    return listed.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Optional<ChosenTrip>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** What can be brought back, last thrown first. */
  ReadOnlyObjectProperty<List<TripSummary>> thrownAwayProperty() {
    return thrownAway.getReadOnlyProperty();
  }

  /** What was thrown away last on this visit and is still away. */
  ReadOnlyObjectProperty<Optional<TripSummary>> lastThrownProperty() {
    return lastThrown.getReadOnlyProperty();
  }

  /** Begins a search; the answer that carries this number is wanted until the next one begins. */
  long look(TripQuery wanted) {
    query.set(wanted);
    return lookWanted.incrementAndGet();
  }

  /** Whether anybody still waits for the answer of that number; any thread. */
  boolean isWanted(long look) {
    return lookWanted.get() == look;
  }

  void listed(long look, Listed answer) {
    if (isWanted(look)) {
      listed.set(answer);
    }
  }

  /** Waits for the sheet of the trip that carries that number. */
  void choose(long choice) {
    told.set(new Told.Nothing());
    choiceWanted = choice;
  }

  /** Shows the sheet of a trip that is still wanted. */
  void chosen(long choice, WholeTrip trip) {
    if (choiceWanted == choice) {
      chosen.set(Optional.of(ChosenTrip.of(trip)));
    }
  }

  /** Shows more of the trip whose sheet is shown, if it is still wanted. */
  void chosen(long choice, UnaryOperator<ChosenTrip> more) {
    if (choiceWanted == choice) {
      chosen.set(chosen.get().map(more));
    }
  }

  /** Shows what is now said of a trip, if its sheet is still shown. */
  void changed(WholeTrip trip) {
    chosen
        .get()
        .filter(shown -> shown.id().equals(trip.summary().id()))
        .ifPresent(shown -> chosen.set(Optional.of(shown.withTrip(trip))));
  }

  /** Shows no sheet. */
  void chooseNone() {
    choiceWanted = 0;
    chosen.set(Optional.empty());
  }

  void tell(Told words) {
    told.set(words);
  }

  /** Takes what can be brought back. */
  void thrownAway(List<TripSummary> trips) {
    thrownAway.set(List.copyOf(trips));
    lastThrown.set(lastThrown.get().filter(trips::contains));
  }

  /** Remembers what was thrown away just now. */
  void thrown(TripSummary trip) {
    lastThrown.set(Optional.of(trip));
  }
}
