package steadypull.drive;

import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.Consumer;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;

/** The kept trips of one library, which is not closed here. Any thread. */
final class KeptTrips implements TripDesk {
  private final TripLibrary library;
  private final DriveWords words;
  private final InstantSource wall;
  private final SequencedMap<String, TripSummary> thrownAway = new LinkedHashMap<>();

  KeptTrips(TripLibrary library, DriveWords words, InstantSource wall) {
    this.library = library;
    this.words = words;
    this.wall = wall;
  }

  @Override
  public List<TripSummary> all() throws DriveException {
    return LibraryQuestion.ask(() -> library.trips(Optional.empty()));
  }

  @Override
  public List<TripSummary> find(String text) throws DriveException {
    return LibraryQuestion.ask(() -> library.trips(Optional.of(text)));
  }

  @Override
  public WholeTrip trip(String tripId) throws DriveException {
    return LibraryQuestion.ask(() -> WholeTrip.of(library, tripId));
  }

  @Override
  public WholeTrip describe(String tripId, TripDetails details, Rig rig) throws DriveException {
    return LibraryQuestion.ask(
        () -> {
          WholeTrip before = WholeTrip.of(library, tripId);
          if (!details.equals(before.summary().details())) {
            library.describe(before.summary().id(), details);
          }
          if (!rig.equals(before.rig())) {
            library.correctVehicle(before.summary().id(), before.vehicle().withRig(rig));
          }
          return WholeTrip.of(library, tripId);
        });
  }

  @Override
  public synchronized void throwAway(String tripId) throws DriveException {
    LibraryQuestion.ask(
        () -> {
          TripSummary trip = library.find(tripId);
          library.remove(trip.id());
          thrownAway.putFirst(trip.id(), trip);
          return trip;
        });
  }

  @Override
  public synchronized void bringBack(String tripId) throws DriveException {
    LibraryQuestion.ask(
        () -> {
          library.putBack(tripId);
          thrownAway.remove(tripId);
          return tripId;
        });
  }

  @Override
  public synchronized List<TripSummary> thrownAway() {
    return List.copyOf(thrownAway.values());
  }

  @Override
  public TripView view(String tripId) throws DriveException {
    return LibraryQuestion.ask(() -> new OpenTrip(library, WholeTrip.of(library, tripId)));
  }

  @Override
  public ExportEnd export(String tripId, ExportTarget target, ExportWatch watch)
      throws DriveException {
    TripSummary trip = LibraryQuestion.ask(() -> library.find(tripId));
    return new TripExport(library, trip, watch).write(target, wall.instant());
  }

  @Override
  public DriveSession playBack(String tripId, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    WholeTrip trip = trip(tripId);
    PlayBack playing = new PlayBack(library, trip.summary(), onSnapshot);
    playing.start(words.setup(trip.vehicle(), false));
    return playing;
  }
}
