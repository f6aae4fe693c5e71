package steadypull.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Vehicle;

/**
 * What a library knows of vehicles' heat: how each was fitted, and what its trips have told, each
 * trip once after it has ended. A trip that is thrown away has taught what it taught. Any thread.
 */
public final class KnownHeat {
  private final TripLibrary library;
  private final LibraryConnection connection;
  private @Nullable LearningThread thread;
  private @Nullable HeatLearning learning;
  private boolean isClosed;

  KnownHeat(TripLibrary library, LibraryConnection connection) {
    this.library = library;
    this.connection = connection;
  }

  /** How many trips have ended that nobody has looked at yet. */
  public int waiting() throws LibraryException {
    return connection.ask("count the trips that were not learnt from", HeatRows::waitingCount);
  }

  /**
   * Learns from the oldest trip that waits, on the calling thread; less than a third of a second
   * for an hour of driving.
   *
   * @return false if no trip waits, or after {@link #stopLearning}
   */
  public boolean learnNext(HeatTeacher teacher) throws LibraryException {
    return learning(teacher).next();
  }

  /**
   * What to tell of trips at which learning failed since the library was opened, four parts each.
   * They are left out until it is opened again.
   */
  public List<String> unlearnt() {
    HeatLearning known;
    synchronized (this) {
      known = learning;
    }
    return known == null ? List.of() : known.unlearnt();
  }

  /** Learns from all trips that wait, beside everything else. */
  public void learnBeside(HeatTeacher teacher) {
    LearningThread woken;
    synchronized (this) {
      if (isClosed) {
        return;
      }
      if (thread == null) {
        thread = new LearningThread("heat", learning(teacher));
      }
      woken = thread;
    }
    woken.wake();
  }

  /** Waits until nothing is learnt beside any more. */
  public void awaitLearned() throws InterruptedException {
    LearningThread running;
    synchronized (this) {
      running = thread;
    }
    if (running != null) {
      running.await();
    }
  }

  /** Ends learning at once, for as long as the library is open: trips wait for the next time. */
  public synchronized void stopLearning() {
    isClosed = true;
    if (learning != null) {
      learning.stop();
    }
  }

  /** What the latest 200 trips of a vehicle have told, oldest first. */
  public List<LessonOfTrip> lessons(String vehicleName) throws LibraryException {
    return connection.ask(
        "read what was learnt of " + vehicleName, handle -> HeatRows.lessons(handle, vehicleName));
  }

  /**
   * A vehicle as a trip of that start begins with it: fitted as it was then, with what trips before
   * have taught, as it was known then.
   */
  public Vehicle settingOut(Vehicle vehicle, Instant start) throws LibraryException {
    return connection.ask(
        "read what was learnt of " + vehicle.name(),
        handle -> HeatRows.settingOut(handle, vehicle, start));
  }

  /**
   * Something was fitted to a vehicle: trips that begin from then on belong to another
   * configuration.
   *
   * @throws IllegalArgumentException if a configuration began at that moment or later
   */
  public void fit(String vehicleName, Configuration fitted) throws LibraryException {
    connection.change(
        "keep what was fitted to " + vehicleName,
        handle -> {
          List<Configuration> kept = HeatRows.configurations(handle, vehicleName);
          Optional<Instant> last = kept.stream().map(Configuration::since).reduce((_, b) -> b);
          if (last.isPresent() && !last.get().isBefore(fitted.since())) {
            throw new IllegalArgumentException(
                "A configuration begins after the one before, found %s after %s"
                    .formatted(fitted.since(), last.get()));
          }
          if (kept.isEmpty()) {
            HeatRows.keep(handle, vehicleName, Configuration.FIRST);
          }
          HeatRows.keep(handle, vehicleName, fitted);
          return vehicleName;
        });
  }

  /** Keeps how a vehicle was fitted and what it knows by that, in place of what was kept before. */
  public void keep(String vehicleName, List<Configuration> configurations) throws LibraryException {
    connection.change(
        "keep what is known of " + vehicleName,
        handle -> {
          HeatRows.deleteConfigurations(handle, vehicleName);
          configurations.forEach(each -> HeatRows.keep(handle, vehicleName, each));
          return vehicleName;
        });
  }

  /**
   * Forgets what trips up to now have taught of a vehicle, in every configuration; how it was
   * fitted stays. Nothing of it is learnt again, trips to come teach anew.
   *
   * @return how many trips had taught something
   */
  public int forget(String vehicleName) throws LibraryException {
    return connection.change(
        "forget what was learnt of " + vehicleName, handle -> HeatRows.forget(handle, vehicleName));
  }

  private synchronized HeatLearning learning(HeatTeacher teacher) {
    if (learning == null) {
      learning = new HeatLearning(library, connection, teacher);
      if (isClosed) {
        learning.stop();
      }
    }
    return learning;
  }

  /** Waits for whoever learns. */
  void close() {
    stopLearning();
    LearningThread running;
    synchronized (this) {
      running = thread;
    }
    if (running != null) {
      running.close();
    }
  }
}
