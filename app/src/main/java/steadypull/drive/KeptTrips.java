package steadypull.drive;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.Consumer;
import steadypull.exchange.TableException;
import steadypull.store.LibraryException;
import steadypull.store.TripDetails;
import steadypull.store.TripDrawing;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

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
    return ask(() -> library.trips(Optional.empty()));
  }

  @Override
  public List<TripSummary> find(String text) throws DriveException {
    return ask(() -> library.trips(Optional.of(text)));
  }

  @Override
  public WholeTrip trip(String tripId) throws DriveException {
    return ask(() -> WholeTrip.of(library, tripId));
  }

  @Override
  public WholeTrip describe(String tripId, TripDetails details, Rig rig) throws DriveException {
    return ask(
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
    ask(
        () -> {
          TripSummary trip = library.find(tripId);
          library.remove(trip.id());
          thrownAway.putFirst(trip.id(), trip);
          return trip;
        });
  }

  @Override
  public synchronized void bringBack(String tripId) throws DriveException {
    ask(
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
  public TripPicture picture(String tripId, int pixelColumns) throws DriveException {
    return ask(
        () -> {
          TripSummary trip = library.find(tripId);
          try (TripDrawing drawing = library.draw(trip.id())) {
            return picture(trip, library.vehicleOf(trip.id()), drawing, pixelColumns);
          }
        });
  }

  private static TripPicture picture(
      TripSummary trip, Vehicle vehicle, TripDrawing drawing, int pixelColumns)
      throws LibraryException {
    long endMicros = Math.max(1, Math.round(trip.durationSeconds() * 1e6)) + 1;
    List<TripPicture.Line> lines = new ArrayList<>();
    for (Limit limit : vehicle.limits().values()) {
      int number = trip.channels().indexOf(limit.channel());
      if (number >= 0) {
        lines.add(
            new TripPicture.Line(
                limit.channel(),
                limit.celsius(),
                drawing.line(number, 0, endMicros, pixelColumns)));
      }
    }
    return new TripPicture(
        lines.stream().filter(TripPicture.Line::hasSamples).toList(), drawing.damaged());
  }

  @Override
  public void export(String tripId, Path file) throws DriveException {
    try {
      TripSummary trip = library.find(tripId);
      TripExport.write(library, trip, file, wall.instant());
    } catch (LibraryException | TableException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  @Override
  public DriveSession playBack(String tripId, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    WholeTrip trip = trip(tripId);
    PlayBack playing = new PlayBack(library, trip.summary(), onSnapshot);
    playing.start(words.setup(trip.vehicle(), false));
    return playing;
  }

  private static <T> T ask(Question<T> question) throws DriveException {
    try {
      return question.ask();
    } catch (LibraryException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  private interface Question<T> {
    T ask() throws LibraryException;
  }
}
