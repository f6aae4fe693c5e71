package steadypull.ui;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import javafx.scene.text.Font;

/** Loads the bundled typeface, so that no installed font is needed. */
final class Typeface {
  /** Family name in the style sheets. */
  static final String FAMILY = "B612";

  private static final List<String> FILES = List.of("B612-Regular.ttf", "B612-Bold.ttf");
  private static final double ANY_SIZE = 20;

  private static boolean isLoaded;

  private Typeface() {}

  /** Makes the typeface known to the toolkit; doing it twice is harmless. */
  static synchronized void load() {
    if (!isLoaded) {
      FILES.forEach(Typeface::load);
      isLoaded = true;
    }
  }

  private static void load(String file) {
    try (InputStream stream =
        Objects.requireNonNull(Typeface.class.getResourceAsStream("fonts/" + file))) {
      Font.loadFont(stream, ANY_SIZE);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(
          "The typeface " + file + " could not be read from the program; install it again",
          unreadable);
    }
  }
}
