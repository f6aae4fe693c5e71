package steadypull.drive;

import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * What waits for the pipeline, in the order in which it came. There is room for so many readings;
 * then whoever brings more waits. Filled by any thread, emptied by one.
 */
final class ArrivalQueue {
  private static final int MOST_WAITING = 2048;

  private final BlockingQueue<Arrival> arrivals = new LinkedBlockingQueue<>();

  /** What a person did goes before readings that wait: nobody presses "Got it" for later. */
  private final Queue<Arrival> calls = new ConcurrentLinkedQueue<>();

  private final Semaphore room = new Semaphore(MOST_WAITING);

  /** Never waits. */
  void put(Arrival arrival) {
    arrivals.add(arrival);
  }

  /** Never waits, and is given out before all that waits. */
  void call(Arrival arrival) {
    calls.add(arrival);
    put(new Arrival.Called());
  }

  /** Waits while the pipeline is behind. */
  void putWhenThereIsRoom(Arrival arrival) {
    try {
      room.acquire();
      put(arrival);
    } catch (InterruptedException ending) {
      Thread.currentThread().interrupt();
    }
  }

  /** The next arrival but calls; waits for one. */
  Arrival take() throws InterruptedException {
    Arrival next = arrivals.take();
    makeRoom(next);
    return next;
  }

  /** The next arrival but calls, if it comes in time. */
  Optional<Arrival> poll(long patienceMillis) throws InterruptedException {
    @Nullable Arrival next = arrivals.poll(patienceMillis, TimeUnit.MILLISECONDS);
    if (next != null) {
      makeRoom(next);
    }
    return Optional.ofNullable(next);
  }

  /** The next call, if there is one. */
  Optional<Arrival> pollCall() {
    return Optional.ofNullable(calls.poll());
  }

  private void makeRoom(Arrival taken) {
    if (needsRoom(taken)) {
      room.release();
    }
  }

  private static boolean needsRoom(Arrival arrival) {
    return switch (arrival) {
      case Arrival.Heard _, Arrival.LinkChanged _ -> true;
      case Arrival.Located _, Arrival.ReceiverChanged _ -> true;
      case Arrival.Diagnosed _, Arrival.TabletTold _ -> false;
      case Arrival.Answered _, Arrival.UnitsChosen _, Arrival.Called _ -> false;
      case Arrival.PortEnded _, Arrival.Failed _, Arrival.End _ -> false;
    };
  }
}
