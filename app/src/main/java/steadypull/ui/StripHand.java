package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import steadypull.drive.TripWindow;

/**
 * Moves the window of a strip: the wheel and two fingers come closer or step back around the place
 * under them, dragging moves, two taps show everything again; so do plus, minus, the arrows and
 * Home where the strip has the keyboard. FX thread only.
 */
final class StripHand {
  private static final double TIMES_A_NOTCH = 1.5;
  private static final double SHARE_OF_A_KEY = 0.25;
  private static final double MIDDLE = 0.5;

  private final Node strip;
  private final Consumer<TripWindow> look;
  private Optional<TripWindow> limits = Optional.empty();
  private Optional<TripWindow> window = Optional.empty();
  private double draggedFrom;

  StripHand(Node strip, Consumer<TripWindow> look) {
    this.strip = strip;
    this.look = look;
    strip.addEventHandler(ScrollEvent.SCROLL, this::scroll);
    strip.addEventHandler(ZoomEvent.ZOOM, this::zoom);
    strip.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    strip.addEventHandler(MouseEvent.MOUSE_DRAGGED, this::drag);
    strip.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
  }

  /** Takes another trip, which is shown whole; empty: there is none. */
  void take(Optional<TripWindow> whole) {
    limits = whole;
    window = whole;
  }

  private void change(UnaryOperator<TripWindow> how) {
    Optional<TripWindow> before = window;
    window = window.map(how);
    if (!window.equals(before)) {
      window.ifPresent(look);
    }
  }

  private void magnify(double times, double share) {
    limits.ifPresent(whole -> change(shown -> shown.magnified(times, share, whole)));
  }

  private void move(double share) {
    limits.ifPresent(whole -> change(shown -> shown.moved(share, whole)));
  }

  private double share(double x) {
    return Math.clamp(x / strip.getLayoutBounds().getWidth(), 0, 1);
  }

  /** A finger that scrolls drags the picture; the mouse event that comes with it does that. */
  private void scroll(ScrollEvent event) {
    if (event.getTouchCount() == 0 && !event.isInertia() && event.getDeltaY() != 0) {
      magnify(event.getDeltaY() > 0 ? TIMES_A_NOTCH : 1 / TIMES_A_NOTCH, share(event.getX()));
    }
    event.consume();
  }

  private void zoom(ZoomEvent event) {
    magnify(event.getZoomFactor(), share(event.getX()));
    event.consume();
  }

  private void press(MouseEvent event) {
    strip.requestFocus();
    draggedFrom = event.getX();
    if (event.getClickCount() == 2) {
      change(shown -> limits.orElse(shown));
    }
    event.consume();
  }

  private void drag(MouseEvent event) {
    move(share(draggedFrom) - share(event.getX()));
    draggedFrom = event.getX();
    event.consume();
  }

  private void key(KeyEvent event) {
    switch (event.getCode()) {
      case PLUS, ADD, EQUALS -> magnify(TIMES_A_NOTCH, MIDDLE);
      case MINUS, SUBTRACT -> magnify(1 / TIMES_A_NOTCH, MIDDLE);
      case LEFT -> move(-SHARE_OF_A_KEY);
      case RIGHT -> move(SHARE_OF_A_KEY);
      case HOME -> change(shown -> limits.orElse(shown));
      default -> {
        return;
      }
    }
    event.consume();
  }
}
