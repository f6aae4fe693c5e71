package steadypull.cli;

import java.util.concurrent.CountDownLatch;
import java.util.function.ToIntFunction;
import steadypull.drive.DriveOutcome;
import steadypull.drive.RunningDrive;

/** Waits for a drive to end, and ends it cleanly when the program is told to stop (Ctrl-C). */
final class StoppableDrive {
  private StoppableDrive() {}

  /**
   * Waits for the end and reports it, also when the program is being stopped.
   *
   * @param report makes an exit status of the outcome
   * @return what the report made
   */
  static int await(RunningDrive drive, ToIntFunction<DriveOutcome> report) {
    CountDownLatch reported = new CountDownLatch(1);
    Thread hook = new Thread(() -> stop(drive, reported), "stop");
    Runtime.getRuntime().addShutdownHook(hook);
    try (var _ = StopSignals.call(drive::close)) {
      return report.applyAsInt(drive.outcome().join());
    } finally {
      reported.countDown();
      removeUnlessStopping(hook);
    }
  }

  /** Runs while the machine shuts the program down: it may not end before the trip is sealed. */
  private static void stop(RunningDrive drive, CountDownLatch reported) {
    drive.close();
    try {
      reported.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private static void removeUnlessStopping(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException stopping) {
      // The hook is what brought us here; it may stay.
    }
  }
}
