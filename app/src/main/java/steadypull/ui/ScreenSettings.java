package steadypull.ui;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Properties;

/**
 * What the screen remembers from one start to the next: day, night or by the clock. One thread at a
 * time.
 */
public final class ScreenSettings {
  private static final String LIGHT = "light";

  private final Optional<Path> file;

  private ScreenSettings(Optional<Path> file) {
    this.file = file;
  }

  /** Settings kept in a small file, which need not exist yet; missing folders are made. */
  public static ScreenSettings in(Path file) {
    return new ScreenSettings(Optional.of(file));
  }

  /** Settings that last as long as the window. */
  public static ScreenSettings unkept() {
    return new ScreenSettings(Optional.empty());
  }

  /** The light that was chosen last; by the clock if none was or it cannot be read. */
  LightChoice light() {
    Properties kept = new Properties();
    if (file.isPresent() && Files.exists(file.get())) {
      try (Reader reader = Files.newBufferedReader(file.get())) {
        kept.load(reader);
      } catch (IOException | IllegalArgumentException unreadable) {
        // Day or night is seen at once and chosen again with one touch: nothing to report.
        return LightChoice.BY_CLOCK;
      }
    }
    return Arrays.stream(LightChoice.values())
        .filter(choice -> choice.name().equals(kept.getProperty(LIGHT)))
        .findFirst()
        .orElse(LightChoice.BY_CLOCK);
  }

  /** Remembers a choice. */
  void keep(LightChoice chosen) {
    if (file.isEmpty()) {
      return;
    }
    Properties kept = new Properties();
    kept.setProperty(LIGHT, chosen.name());
    try {
      Path folder = file.get().toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      try (Writer writer = Files.newBufferedWriter(file.get())) {
        kept.store(writer, null);
      }
    } catch (IOException unwritable) {
      // The choice is in force all the same, and asked for again at the next start.
      return;
    }
  }
}
