package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import javafx.scene.Node;
import javafx.scene.Parent;

/** Runs test code on the FX thread of the headless platform, and finds nodes there. */
final class Fx {
  private Fx() {}

  static <T> T call(Callable<T> work) {
    FxThread.startWithoutDisplay();
    CompletableFuture<T> done = new CompletableFuture<>();
    FxThread.run(
        () -> {
          try {
            done.complete(work.call());
          } catch (Exception | AssertionError failed) {
            done.completeExceptionally(failed);
          }
        });
    return done.join();
  }

  static void run(Runnable work) {
    call(
        () -> {
          work.run();
          return true;
        });
  }

  /** Lets everything that is waiting for the FX thread happen. */
  static void settle() {
    run(() -> {});
    run(() -> {});
  }

  /** Every node under a root that can be seen, parents before children. */
  static List<Node> visible(Parent root) {
    List<Node> nodes = new ArrayList<>();
    for (Node node : root.getChildrenUnmodifiable()) {
      if (node.isVisible()) {
        nodes.add(node);
        if (node instanceof Parent parent) {
          nodes.addAll(visible(parent));
        }
      }
    }
    return nodes;
  }
}
