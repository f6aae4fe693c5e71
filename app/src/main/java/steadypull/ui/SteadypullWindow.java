package steadypull.ui;

import java.time.InstantSource;
import java.time.ZoneId;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import steadypull.drive.DriveDesk;
import steadypull.report.ComparisonDesk;
import steadypull.tablet.SpeechCommand;

/** The window of the program. */
public final class SteadypullWindow {
  private static final double LEAST_SHARE = 0.5;

  private final DriveDesk desk;
  private final WindowSettings settings;
  private final ComparisonDesk comparisons;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final AtomicReference<@Nullable Throwable> trouble = new AtomicReference<>();
  private final ExecutorService background = thread("desk");
  private final ExecutorService library = thread("trips");
  private final ExecutorService exporting = thread("export");
  private final ExecutorService speaking = thread("voice");

  private final AtomicReference<@Nullable Runnable> leaving = new AtomicReference<>();

  /** Prepares a window; nothing is shown before {@link #open}. */
  public SteadypullWindow(DriveDesk desk, ComparisonDesk comparisons, WindowSettings settings) {
    this.desk = desk;
    this.comparisons = comparisons;
    this.settings = settings;
  }

  /** One thread; what comes when the window has closed is dropped. */
  private static ExecutorService thread(String name) {
    return new ThreadPoolExecutor(
        1,
        1,
        0,
        TimeUnit.SECONDS,
        new LinkedBlockingQueue<>(),
        Thread.ofPlatform().name(name).daemon().factory(),
        new ThreadPoolExecutor.DiscardPolicy());
  }

  /**
   * Opens the window and returns when it has been closed and a running drive has ended. Once in the
   * life of the program; any thread but the FX thread.
   *
   * @throws WindowException if there is no display or a system library is missing; the message
   *     names it and the package that brings it
   */
  public void open() throws WindowException {
    try {
      Platform.startup(this::show);
      closed.await();
    } catch (RuntimeException | LinkageError cannotStart) {
      trouble.set(cannotStart);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } finally {
      background.shutdown();
      library.shutdown();
      exporting.shutdown();
      speaking.shutdownNow();
    }
    Throwable found = trouble.get();
    if (found != null) {
      throw new WindowException(GraphicsTrouble.explain(found), found);
    }
  }

  /**
   * Asks the window to close as its own button does: a running drive ends first, its trip sealed.
   * Any thread; returns at once.
   */
  public void leave() {
    Runnable shown = leaving.get();
    if (shown == null) {
      closed.countDown();
    } else {
      FxThread.later(shown);
    }
  }

  /** The toolkit meets some missing libraries only here, with the first text. */
  private void show() {
    try {
      showStage();
    } catch (RuntimeException | LinkageError cannotShow) {
      trouble.set(cannotShow);
      finish();
    }
  }

  private void showStage() {
    Words words = new Words(settings.locale());
    Shell shell =
        new Shell(
            desk,
            words,
            settings.units(),
            new Shell.Surroundings(
                ZoneId.systemDefault(),
                InstantSource.system(),
                System::nanoTime,
                background,
                library,
                exporting,
                settings.screen(),
                comparisons,
                new Loudspeaker(SpeechCommand.ofThisMachine(settings.locale()), speaking)));
    Stage stage = new Stage();
    stage.setTitle(words.say("window.title"));
    stage.setScene(new Scene(shell.root()));
    stage.setMinWidth(DriveGeometry.WIDTH * LEAST_SHARE);
    stage.setMinHeight(DriveGeometry.HEIGHT * LEAST_SHARE);
    stage.setOnCloseRequest(
        event -> {
          event.consume();
          shell.leave(() -> close(stage));
        });
    leaving.set(() -> shell.leave(() -> close(stage)));
    shell.showStart();
    settings.port().ifPresent(port -> shell.begin(port, settings.vehicle()));
    stage.show();
  }

  private void close(Stage stage) {
    stage.close();
    finish();
  }

  private void finish() {
    closed.countDown();
    Platform.exit();
  }
}
