package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ReadOnlyGate;

/**
 * Reads a vehicle until it is closed: opens the link, starts the adapter, finds the vehicle,
 * streams readings, and recovers by itself from whatever happens to the link.
 *
 * <p>{@link #run} works on the thread that calls it and calls the listener there; {@link #close}
 * may be called from any thread. All times are those of the source's clock.
 */
public final class VehicleReader implements Runnable, AutoCloseable {
  private final LinkSource source;
  private final ReaderSettings settings;
  private final ReaderListener listener;
  private final SignOfLife life;
  private final ReconnectLadder ladder = new ReconnectLadder();
  private Optional<VehicleKnowledge> vehicle = Optional.empty();
  private int openingsWithoutAdapter;
  private final Object openingGuard = new Object();
  private @Nullable Thread opener;

  /**
   * Makes a reader; nothing is opened yet.
   *
   * @throws IllegalArgumentException if a defined signal's header is none that the read-only gate
   *     lets through
   */
  public VehicleReader(LinkSource source, ReaderSettings settings, ReaderListener listener) {
    settings.defined().forEach(VehicleReader::requireReadable);
    this.source = source;
    this.settings = settings;
    this.listener = listener;
    this.life = new SignOfLife(source.clock(), listener, new LinkState.Opening(source.address()));
  }

  private static void requireReadable(DefinedSignal signal) {
    if (!ReadOnlyGate.permits(WorkingMode.header(signal.header()))) {
      throw new IllegalArgumentException(
          "The header of signal \"%s\" is a diagnostic request header such as 7E1 or 18DA18F1, found \"%s\""
              .formatted(signal.name(), signal.header()));
    }
  }

  /**
   * Reads until {@link #close} is called or the thread is interrupted. Trouble with the link is
   * told to the listener and never thrown.
   */
  @Override
  public void run() {
    while (life.goesOn()) {
      life.announce(new LinkState.Opening(source.address()));
      switch (openOnce()) {
        case Conversation.Ending.Stopped stopped -> life.stop();
        case Conversation.Ending.Lost lost -> waitAfter(lost.reason());
        case Conversation.Ending.NoAdapter none -> {
          openingsWithoutAdapter++;
          if (openingsWithoutAdapter % source.waysToOpen() == 0) {
            waitAfter(none.reason());
          }
        }
      }
    }
    life.announce(new LinkState.Closed());
  }

  private Conversation.Ending openOnce() {
    try (AdapterPort port = openPort()) {
      Conversation conversation =
          new Conversation(port, life, source.clock(), settings, listener, ladder, vehicle);
      try {
        return conversation.run();
      } finally {
        vehicle = conversation.vehicle();
      }
    } catch (LinkException e) {
      return life.goesOn()
          ? new Conversation.Ending.Lost(String.valueOf(e.getMessage()))
          : new Conversation.Ending.Stopped();
    }
  }

  /** Opening may block for long; closing the reader ends it where the system allows. */
  private AdapterPort openPort() throws LinkException {
    synchronized (openingGuard) {
      opener = life.goesOn() ? Thread.currentThread() : null;
    }
    try {
      return AdapterPort.open(source, life, VehiclePolling.pacing(settings, 1).leastGap());
    } finally {
      synchronized (openingGuard) {
        opener = null;
      }
    }
  }

  private void waitAfter(String reason) {
    int seconds = ladder.nextBackOffSeconds();
    life.announce(new LinkState.Lost(reason, seconds));
    life.pause(Duration.ofSeconds(seconds));
  }

  /**
   * Ends {@link #run} soon and from any thread; returns at once. Closing twice is harmless. Where
   * the port is being opened, the thread that runs the reader is interrupted.
   */
  @Override
  public void close() {
    life.stop();
    synchronized (openingGuard) {
      if (opener != null) {
        opener.interrupt();
      }
    }
  }
}
