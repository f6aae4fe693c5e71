package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.drive.TripPicture;
import steadypull.drive.WholeTrip;
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
  private final AtomicLong choiceWanted = new AtomicLong();

  /**
   * The trip whose sheet is shown.
   *
   * @param picture comes a little later than the words
   */
  record ChosenTrip(WholeTrip trip, Optional<TripPicture> picture) {
    String id() {
      return trip.summary().id();
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

  /** Begins to read another trip for its sheet. */
  long choose() {
    told.set(new Told.Nothing());
    return choiceWanted.incrementAndGet();
  }

  /** Whether that trip's sheet is still wanted; any thread. */
  boolean isChosen(long choice) {
    return choiceWanted.get() == choice;
  }

  void chosen(long choice, ChosenTrip trip) {
    if (isChosen(choice)) {
      chosen.set(Optional.of(trip));
    }
  }

  /** Shows what is now said of a trip, if its sheet is still shown. */
  void changed(WholeTrip trip) {
    chosen
        .get()
        .filter(shown -> shown.id().equals(trip.summary().id()))
        .ifPresent(shown -> chosen.set(Optional.of(new ChosenTrip(trip, shown.picture()))));
  }

  /** Shows no sheet. */
  void chooseNone() {
    choiceWanted.incrementAndGet();
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
