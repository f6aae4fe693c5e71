package steadypull.adapter.position;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.ListeningLink;
import steadypull.adapter.link.ListeningSource;

/**
 * Listens to a satellite receiver until it is closed, and looks for it again whenever it is gone.
 *
 * <p>{@link #run} works on the thread that calls it and calls the listener there; {@link #close}
 * may be called from any thread.
 */
public final class SatelliteReceiver implements Runnable, AutoCloseable {
  /** A pause of that length ends a moment: receivers speak in bursts, once a second or faster. */
  private static final Duration SLICE = Duration.ofMillis(200);

  private static final Duration LONGEST_SILENCE = Duration.ofSeconds(5);
  private static final int[] BACK_OFF_SECONDS = {1, 2, 5, 10, 30};

  private final ListeningSource source;
  private final LinkClock stamps;
  private final ReceiverListener listener;
  private volatile boolean isClosed;
  private @Nullable ReceiverState state;
  private int failures;
  private long lastSentenceNanoTime;

  /**
   * Makes a receiver; nothing is opened yet.
   *
   * @param stamps the clock of everything that is told, such as that of the vehicle's link; its
   *     time may be asked for from any thread
   */
  public SatelliteReceiver(ListeningSource source, LinkClock stamps, ReceiverListener listener) {
    this.source = source;
    this.stamps = stamps;
    this.listener = listener;
  }

  /**
   * Listens until {@link #close} is called or the thread is interrupted. Trouble is told to the
   * listener and never thrown.
   */
  @Override
  public void run() {
    while (goesOn()) {
      listenOnce();
      waitBeforeNextTry();
    }
    announce(new ReceiverState.Closed());
  }

  private boolean goesOn() {
    return !isClosed && !Thread.currentThread().isInterrupted();
  }

  private void listenOnce() {
    try (ListeningLink link = source.open()) {
      listen(link);
    } catch (LinkException e) {
      if (goesOn()) {
        announce(new ReceiverState.Absent(String.valueOf(e.getMessage())));
      }
    }
  }

  private void listen(ListeningLink link) throws LinkException {
    SentenceLines lines = new SentenceLines();
    Moments moments = new Moments();
    lastSentenceNanoTime = source.clock().nanoTime();
    while (goesOn()) {
      byte[] came = link.read(SLICE);
      if (came.length == 0) {
        moments.pause(stamps.nanoTime()).ifPresent(this::tell);
        if (isSilent()) {
          break;
        }
      }
      for (String line : lines.accept(came)) {
        SentenceReader.read(line).ifPresent(sentence -> hear(sentence, moments));
      }
    }
    if (goesOn()) {
      source.tryAnotherWay();
      announce(new ReceiverState.Absent(silence()));
    }
  }

  private boolean isSilent() {
    return source.clock().nanoTime() - lastSentenceNanoTime > LONGEST_SILENCE.toNanos();
  }

  private String silence() {
    return "No satellite receiver is heard at %s: expected NMEA 0183 sentences, found none within %d s. Check its plug and its power; it is looked for again and again."
        .formatted(source.address(), LONGEST_SILENCE.toSeconds());
  }

  private void hear(Sentence sentence, Moments moments) {
    failures = 0;
    lastSentenceNanoTime = source.clock().nanoTime();
    Optional<PositionReport> report = moments.accept(sentence, stamps.nanoTime());
    report.ifPresent(this::tell);
  }

  private void tell(PositionReport report) {
    announce(
        switch (report) {
          case PositionReport.Fixed fixed -> new ReceiverState.Fixed();
          case PositionReport.Unfixed unfixed -> new ReceiverState.Unfixed();
        });
    listener.report(report);
  }

  private void announce(ReceiverState next) {
    boolean isStillAbsent =
        next instanceof ReceiverState.Absent && state instanceof ReceiverState.Absent;
    if (!next.equals(state) && !isStillAbsent) {
      state = next;
      listener.receiverState(next, stamps.nanoTime());
    }
  }

  private void waitBeforeNextTry() {
    int seconds = BACK_OFF_SECONDS[Math.min(failures, BACK_OFF_SECONDS.length - 1)];
    failures++;
    try {
      for (int slice = 0; slice < seconds * 5 && goesOn(); slice++) {
        source.clock().pause(SLICE);
      }
    } catch (InterruptedException closing) {
      Thread.currentThread().interrupt();
    }
  }

  /** Ends {@link #run} soon and from any thread; returns at once. Closing twice is harmless. */
  @Override
  public void close() {
    isClosed = true;
  }
}
