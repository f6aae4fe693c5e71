package steadypull.ui;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicLong;
import steadypull.drive.DriveException;
import steadypull.drive.TripDesk;
import steadypull.drive.TripPicture;
import steadypull.drive.TripView;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripSummary;

/**
 * Keeps the chosen trip open and has its pictures drawn; while nobody waits, it draws and reads
 * ahead what is likely to be asked for next, a few milliseconds at a time, so that whoever asks
 * comes next. The executor runs one thing after the other; asked on the FX thread.
 */
final class TripLook {
  /** Few enough that who taps waits for one of them only. */
  private static final int SLICES = 12;

  private final TripDesk desk;
  private final Executor library;
  private final int columns;
  private final Listener listener;
  private final AtomicLong wanted = new AtomicLong();
  private final AtomicLong windowWanted = new AtomicLong();

  /** On the executor's thread only. */
  private Optional<TripView> open = Optional.empty();

  /** Whether code that draws has run already; on the executor's thread only. */
  private boolean isWarm;

  /** Hears what was found out; on the executor's thread. */
  interface Listener {
    void opened(long look, WholeTrip trip);

    /** The whole trip. */
    void drawn(long look, TripPicture whole);

    /** A window of it; twice where the first picture is not exact. */
    void shown(long look, TripPicture window);

    /** All that cannot be read of it. */
    void examined(long look, TripDamage damage);

    void refused(long look, DriveException refused);
  }

  /**
   * Nothing is open.
   *
   * @param columns width of the pictures in pixels
   */
  TripLook(TripDesk desk, Executor library, int columns, Listener listener) {
    this.desk = desk;
    this.library = library;
    this.columns = columns;
    this.listener = listener;
  }

  /** Begins another trip, whose pictures carry that number; the one before is no longer wanted. */
  long begin() {
    windowWanted.incrementAndGet();
    return wanted.incrementAndGet();
  }

  /**
   * Opens a trip in place of the one before.
   *
   * @param look what {@link #begin} gave
   * @param others what else is listed
   */
  void open(long look, String tripId, List<TripSummary> others) {
    library.execute(() -> doing(look, () -> read(tripId, look, others)));
  }

  /** Draws a window of the open trip; who asks anew waits for the last answer alone. */
  void show(TripWindow window) {
    long look = wanted.get();
    long asked = windowWanted.incrementAndGet();
    library.execute(() -> doing(look, () -> draw(window, look, asked)));
  }

  /** Lets go of the open trip. */
  void close() {
    begin();
    library.execute(this::letGo);
  }

  private void letGo() {
    open.ifPresent(TripView::close);
    open = Optional.empty();
  }

  private interface Step {
    void take() throws DriveException;
  }

  /** Whoever has chosen another trip waits for nothing of this one. */
  private void doing(long look, Step step) {
    if (wanted.get() != look) {
      return;
    }
    try {
      step.take();
    } catch (DriveException refused) {
      listener.refused(look, refused);
    }
  }

  private void read(String tripId, long look, List<TripSummary> others) throws DriveException {
    letGo();
    TripView view = desk.view(tripId);
    open = Optional.of(view);
    listener.opened(look, view.trip());
    TripWindow whole = TripWindow.whole(view.trip().summary());
    listener.drawn(look, view.picture(whole, columns));
    long asked = windowWanted.get();
    if (isWarm) {
      readAhead(whole, look, asked);
    } else {
      isWarm = true;
      warmUp(others, () -> readAhead(whole, look, asked), look);
    }
  }

  private void draw(TripWindow window, long look, long asked) throws DriveException {
    if (windowWanted.get() != asked || open.isEmpty()) {
      return;
    }
    TripView view = open.get();
    TripPicture known = view.known(window, columns);
    listener.shown(look, known);
    if (!known.isExact()) {
      listener.shown(look, view.picture(window, columns));
    }
    readAhead(window, look, asked);
  }

  /** Draws the longest of the listed trips unseen: the first trip drawn takes longest. */
  private void warmUp(List<TripSummary> listed, Runnable after, long look) {
    Optional<TripView> longest =
        listed.stream()
            .filter(TripSummary::sealed)
            .max(Comparator.comparingLong(TripSummary::samples))
            .flatMap(this::viewUnseen);
    if (longest.isPresent()) {
      warmUp(longest.get(), 0, after, look);
    } else {
      after.run();
    }
  }

  private Optional<TripView> viewUnseen(TripSummary trip) {
    try {
      return Optional.of(desk.view(trip.id()));
    } catch (DriveException untold) {
      // Told when somebody chooses that trip.
      return Optional.empty();
    }
  }

  private void warmUp(TripView unseen, int slice, Runnable after, long look) {
    boolean isGoing =
        goOn(
            () -> {
              if (wanted.get() == look && slice < SLICES && drawUnseen(unseen, slice)) {
                warmUp(unseen, slice + 1, after, look);
              } else {
                unseen.close();
                after.run();
              }
            });
    if (!isGoing) {
      unseen.close();
    }
  }

  /** Prepares on, unless the window has closed meanwhile: then nobody wants it any more. */
  private boolean goOn(Runnable step) {
    try {
      library.execute(step);
      return true;
    } catch (RejectedExecutionException closed) {
      return false;
    }
  }

  private boolean drawUnseen(TripView unseen, int slice) {
    try {
      unseen.picture(slice(unseen, slice), columns);
      return true;
    } catch (DriveException untold) {
      // Told when somebody chooses that trip.
      return false;
    }
  }

  private static TripWindow slice(TripView trip, int slice) {
    TripWindow whole = TripWindow.whole(trip.trip().summary());
    long width = Math.max(1, whole.widthMicros() / SLICES);
    return new TripWindow(slice * width, (slice + 1) * width);
  }

  private void readAhead(TripWindow window, long look, long asked) {
    goOn(
        () ->
            doing(
                look,
                () -> {
                  if (windowWanted.get() == asked && open.isPresent()) {
                    takeStep(open.get(), window, look, asked);
                  }
                }));
  }

  private void takeStep(TripView view, TripWindow window, long look, long asked)
      throws DriveException {
    if (view.readAhead(window) || view.examine()) {
      readAhead(window, look, asked);
    } else {
      listener.examined(look, view.damage());
    }
  }
}
