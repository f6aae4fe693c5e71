package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns what the toolkit throws when it cannot start into words that help. Any thread. */
final class GraphicsTrouble {
  private static final List<Library> LIBRARIES =
      List.of(
          new Library("libgtk-3", "GTK 3", "libgtk-3-0", "gtk3"),
          new Library("libpango", "Pango", "libpangoft2-1.0-0", "pango"),
          new Library("libfreetype", "FreeType", "libfreetype6", "freetype"),
          new Library("libXtst", "the X11 test extension", "libxtst6", "libXtst"),
          new Library("libXxf86vm", "the X11 video mode extension", "libxxf86vm1", "libXxf86vm"),
          new Library("libGL", "OpenGL", "libgl1", "libglvnd-glx"),
          new Library("libgthread", "GLib", "libglib2.0-0", "glib2"),
          new Library("libglib", "GLib", "libglib2.0-0", "glib2"));

  private record Library(String file, String title, String debian, String fedora) {}

  private GraphicsTrouble() {}

  /** What was tried, what is missing, and what to do about it. */
  static String explain(Throwable thrown) {
    String texts = String.join("\n", texts(thrown));
    for (Library library : LIBRARIES) {
      if (texts.contains(library.file())) {
        return missing(library);
      }
    }
    if (texts.contains("DISPLAY")) {
      return "Tried to open the window, expected a display, found none. Start Steadypull in a"
          + " graphical session, or use its commands (steadypull --help).";
    }
    return "Tried to open the window, expected the screen toolkit to start, found: "
        + texts.lines().findFirst().orElse(thrown.getClass().getSimpleName())
        + ". Its commands work without a window (steadypull --help).";
  }

  private static String missing(Library library) {
    return ("Tried to open the window, expected the system library %s (%s), found none. Install it:"
            + " on Debian or Ubuntu \"apt install %s\", on Fedora \"dnf install %s\".")
        .formatted(library.title(), library.file(), library.debian(), library.fedora());
  }

  private static List<String> texts(Throwable thrown) {
    List<String> texts = new ArrayList<>();
    @Nullable Throwable cause = thrown;
    while (cause != null && texts.size() < 20) {
      texts.add(String.valueOf(cause.getMessage()));
      cause = cause.getCause();
    }
    return texts;
  }
}
