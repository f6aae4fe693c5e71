package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import steadypull.store.LibraryException;
import steadypull.store.TripDamage;
import steadypull.store.TripDrawing;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Limit;

/** A trip of a library, which is not closed here. One thread. */
final class OpenTrip implements TripView {
  private final TripLibrary library;
  private final WholeTrip trip;
  private TripDrawing drawing;

  OpenTrip(TripLibrary library, WholeTrip trip) throws LibraryException {
    this.library = library;
    this.trip = trip;
    this.drawing = library.draw(trip.summary().id());
  }

  @Override
  public WholeTrip trip() {
    return trip;
  }

  @Override
  public TripPicture picture(TripWindow window, int pixelColumns) throws DriveException {
    return LibraryQuestion.ask(
        () -> {
          bringUpToDate();
          List<TripPicture.Line> lines = new ArrayList<>();
          for (Limit limit : trip.limits()) {
            lines.add(
                new TripPicture.Line(
                    limit.channel(),
                    limit.celsius(),
                    drawing.line(
                        number(limit), window.fromMicros(), window.toMicros(), pixelColumns)));
          }
          return new TripPicture(window, drawn(lines), true, drawing.damaged());
        });
  }

  @Override
  public TripPicture known(TripWindow window, int pixelColumns) throws DriveException {
    return LibraryQuestion.ask(
        () -> {
          boolean isExact = true;
          List<TripPicture.Line> lines = new ArrayList<>();
          for (Limit limit : trip.limits()) {
            var known =
                drawing.known(number(limit), window.fromMicros(), window.toMicros(), pixelColumns);
            isExact &= known.isExact();
            lines.add(new TripPicture.Line(limit.channel(), limit.celsius(), known.line()));
          }
          return new TripPicture(window, drawn(lines), isExact, drawing.damaged());
        });
  }

  private int number(Limit limit) {
    return trip.summary().channels().indexOf(limit.channel());
  }

  private static List<TripPicture.Line> drawn(List<TripPicture.Line> lines) {
    return lines.stream().filter(TripPicture.Line::hasSamples).toList();
  }

  /** While a trip is recorded, its short segments give way to long ones. */
  private void bringUpToDate() throws LibraryException {
    if (!trip.summary().sealed()) {
      drawing.close();
      drawing = library.draw(trip.summary().id());
    }
  }

  @Override
  public boolean readAhead(TripWindow window) throws DriveException {
    return trip.summary().sealed()
        && LibraryQuestion.ask(() -> drawing.readAhead(window.fromMicros(), window.toMicros()));
  }

  @Override
  public boolean examine() throws DriveException {
    return trip.summary().sealed() && LibraryQuestion.ask(drawing::examine);
  }

  @Override
  public TripDamage damage() throws DriveException {
    return trip.summary().sealed()
        ? LibraryQuestion.ask(drawing::damage)
        : new TripDamage(trip.summary().id(), List.of(), false);
  }

  @Override
  public void close() {
    drawing.close();
  }
}
