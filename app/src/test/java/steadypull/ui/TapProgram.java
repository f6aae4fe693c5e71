package steadypull.ui;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveException;
import steadypull.drive.DriveWords;
import steadypull.drive.LiveDrives;
import steadypull.drive.TripDesk;
import steadypull.drive.TripPicture;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** A program that taps trips and says what it waited for, in ms: nothing is compiled yet. */
final class TapProgram {
  private static final int COLUMNS = 1_280;
  private static final int WINDOWS = 40;

  /** The longest window that is drawn from samples. */
  private static final long HARDEST_MICROS = 4_000_000L * COLUMNS - 1;

  private final TripDesk desk;
  private final ExecutorService library = Executors.newSingleThreadExecutor();
  private final TripLook look;
  private final Waiting waiting = new Waiting();

  /** How the trip comes to be tapped. A closed set. */
  enum Way {
    /** Right after the list, nothing having been drawn. */
    BARE,
    /** After the newest trip, which lies open beside the list, was drawn, and nothing more. */
    NEWEST,
    /** While the program still prepares itself. */
    AT_ONCE,
    /** After it has. */
    PREPARED
  }

  private TapProgram(TripDesk desk) {
    this.desk = desk;
    this.look = new TripLook(desk, library, COLUMNS, waiting);
  }

  public static void main(String[] arguments) throws Exception {
    try (TripLibrary library = TripLibrary.open(Path.of(arguments[0]))) {
      DriveWords words = new DriveWords(RuleSet.shipped(), Locale.ENGLISH, UnitSystem.METRIC);
      TripDesk desk =
          new LiveDrives(library, List.of(), words, InstantSource.system(), "0").trips();
      new TapProgram(desk).run(Way.valueOf(arguments[1]));
    }
  }

  private void run(Way way) throws Exception {
    List<TripSummary> trips = desk.all();
    switch (way) {
      case BARE -> {}
      case NEWEST -> {
        look.open(look.begin(), trips.getFirst().id(), List.of());
        waiting.until("drawn");
      }
      case AT_ONCE -> {
        look.open(look.begin(), trips.getFirst().id(), trips);
        waiting.until("drawn");
      }
      case PREPARED -> {
        look.open(look.begin(), trips.getFirst().id(), trips);
        waiting.until("examined");
      }
    }
    tap(trips.getLast(), trips, "1 the first long trip is tapped");
    jump();
    waiting.until("examined");
    windows(trips.getLast());
    tap(trips.get(1), trips, "5 another long trip is tapped");
    look.close();
    library.shutdown();
  }

  private void tap(TripSummary trip, List<TripSummary> trips, String what) throws Exception {
    long asked = System.nanoTime();
    look.open(look.begin(), trip.id(), trips);
    tell(what, (double) (waiting.until("drawn") - asked));
  }

  /** A window in the middle of the trip, while nothing is read ahead. */
  private void jump() throws Exception {
    long from = 5 * 3_600_000_000L - HARDEST_MICROS / 2;
    long asked = System.nanoTime();
    look.show(new TripWindow(from, from + HARDEST_MICROS));
    tell("2 85 min at once, bounds or more", (double) (waiting.until("bounds", "exact") - asked));
    if (waiting.last.equals("bounds")) {
      waiting.until("exact");
    }
    tell("3 85 min at once, exact", (double) (waiting.lastNanos - asked));
  }

  private void windows(TripSummary trip) throws Exception {
    SplittableRandom random = new SplittableRandom(9);
    long end = Math.round(trip.durationSeconds() * 1e6);
    double[] waited = new double[WINDOWS];
    for (int i = 0; i < WINDOWS; i++) {
      long width =
          i % 2 == 0
              ? HARDEST_MICROS
              : (long) (1e6 * Math.exp(random.nextDouble(Math.log(10), Math.log(36_000))));
      long from = random.nextLong(end - width);
      long asked = System.nanoTime();
      look.show(new TripWindow(from, from + width));
      waited[i] = waiting.until("exact") - asked;
    }
    Arrays.sort(waited);
    tell("4 any window, read ahead, median of 40", waited[WINDOWS / 2]);
    tell("4 any window, read ahead, worst of 40", waited[WINDOWS - 1]);
  }

  private static void tell(String what, double nanos) {
    System.out.printf(Locale.ROOT, "%s: %.2f%n", what, nanos / 1e6);
  }

  /** Hands the news over to who waits for it, and the rest to nobody. */
  private static final class Waiting implements TripLook.Listener {
    private record News(String what, long nanos) {}

    private final LinkedBlockingQueue<News> news = new LinkedBlockingQueue<>();
    private String last = "";
    private long lastNanos;

    long until(String... wanted) throws InterruptedException {
      do {
        News next = news.take();
        last = next.what;
        lastNanos = next.nanos;
      } while (!List.of(wanted).contains(last));
      return lastNanos;
    }

    private void hear(String what) {
      news.add(new News(what, System.nanoTime()));
    }

    @Override
    public void opened(long look, WholeTrip trip) {
      hear("opened");
    }

    @Override
    public void drawn(long look, TripPicture whole) {
      hear("drawn");
    }

    @Override
    public void shown(long look, TripPicture window) {
      hear(window.isExact() ? "exact" : "bounds");
    }

    @Override
    public void examined(long look, TripDamage damage) {
      hear("examined");
    }

    @Override
    public void refused(long look, DriveException refused) {
      throw new IllegalStateException(refused);
    }
  }
}
