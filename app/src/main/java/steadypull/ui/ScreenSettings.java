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
 * What the screen remembers from one start to the next: day, night or by the clock, and how loud it
 * is. One thread at a time.
 */
public final class ScreenSettings {
  private static final String LIGHT = "light";
  private static final String SOUND = "sound";

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
    return chosen(LIGHT, LightChoice.values(), LightChoice.BY_CLOCK);
  }

  /** How loud it was to be last; spoken if nothing was chosen or it cannot be read. */
  SoundChoice sound() {
    return chosen(SOUND, SoundChoice.values(), SoundChoice.SPOKEN);
  }

  private <T extends Enum<T>> T chosen(String key, T[] choices, T otherwise) {
    String name = kept().getProperty(key);
    return Arrays.stream(choices)
        .filter(choice -> choice.name().equals(name))
        .findFirst()
        .orElse(otherwise);
  }

  private Properties kept() {
    Properties kept = new Properties();
    if (file.isPresent() && Files.exists(file.get())) {
      try (Reader reader = Files.newBufferedReader(file.get())) {
        kept.load(reader);
      } catch (IOException | IllegalArgumentException unreadable) {
        // What was chosen is seen and heard at once and chosen again with one touch.
        return new Properties();
      }
    }
    return kept;
  }

  /** Remembers a choice. */
  void keep(LightChoice chosen) {
    keep(LIGHT, chosen.name());
  }

  /** Remembers a choice. */
  void keep(SoundChoice chosen) {
    keep(SOUND, chosen.name());
  }

  private void keep(String key, String name) {
    if (file.isEmpty()) {
      return;
    }
    Properties kept = kept();
    kept.setProperty(key, name);
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
