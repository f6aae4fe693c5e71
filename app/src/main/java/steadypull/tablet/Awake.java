package steadypull.tablet;

import java.util.Objects;

/** Whether the machine is kept awake. A closed set. */
public sealed interface Awake extends AutoCloseable {
  @Override
  void close();

  /**
   * It is, until this is closed.
   *
   * @param release lets it sleep again
   */
  record Held(Runnable release) implements Awake {
    public Held {
      Objects.requireNonNull(release);
    }

    @Override
    public void close() {
      release.run();
    }
  }

  /**
   * It is not.
   *
   * @param reason what the system said, for people who look into it
   */
  record NotHeld(String reason) implements Awake {
    public NotHeld {
      Objects.requireNonNull(reason);
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }
}
