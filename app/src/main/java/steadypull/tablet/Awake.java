package steadypull.tablet;

import java.util.Objects;
import java.util.function.BooleanSupplier;

/** Whether the machine is kept awake. A closed set. */
public sealed interface Awake extends AutoCloseable {
  @Override
  void close();

  /**
   * It is, until this is closed.
   *
   * @param holds whether what keeps it awake is still there
   * @param release lets it sleep again
   */
  record Held(BooleanSupplier holds, Runnable release) implements Awake {
    public Held {
      Objects.requireNonNull(holds);
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
