package steadypull.ui;

import java.util.concurrent.CountDownLatch;
import javafx.application.Platform;

/** The one door to the FX thread. */
final class FxThread {
  private FxThread() {}

  /** Runs there: at once if already there, else at the next turn. */
  static void run(Runnable work) {
    if (Platform.isFxApplicationThread()) {
      work.run();
    } else {
      Platform.runLater(work);
    }
  }

  /** Runs there at its next turn. Any thread; returns at once. */
  static void later(Runnable work) {
    Platform.runLater(work);
  }

  /** Starts the toolkit on its headless platform; one that runs already is left as it is. */
  static void startWithoutDisplay() {
    setUnlessSet("glass.platform", "Headless");
    setUnlessSet("prism.order", "sw");
    setUnlessSet("java.awt.headless", "true");
    CountDownLatch started = new CountDownLatch(1);
    try {
      Platform.startup(started::countDown);
    } catch (IllegalStateException runsAlready) {
      started.countDown();
    }
    await(started);
    Platform.setImplicitExit(false);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(
          "The screen toolkit was interrupted while it started", interrupted);
    }
  }

  private static void setUnlessSet(String property, String value) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, value);
    }
  }
}
