package steadypull.ui;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;
import org.jspecify.annotations.Nullable;

/** The system's own dialogue for files. */
final class FileDialog implements FileChoice {
  private static final String ANY = "*";

  private final Words words;
  private final Node owner;

  /**
   * A dialogue of one window.
   *
   * @param owner any node of it
   */
  FileDialog(Words words, Node owner) {
    this.words = words;
    this.owner = owner;
  }

  @Override
  public Optional<Path> forTrip(String tripId) {
    FileChooser dialogue = new FileChooser();
    dialogue.setTitle(words.say("trips.exportTitle"));
    dialogue.setInitialFileName(tripId + ".csv");
    dialogue
        .getExtensionFilters()
        .setAll(
            List.of(
                new ExtensionFilter(words.say("trips.asTable"), "*.csv", "*.csv.gz"),
                new ExtensionFilter(words.say("trips.asTrip"), "*.trip"),
                new ExtensionFilter(words.say("trips.asTrack"), "*.gpx")));
    File chosen = dialogue.showSaveDialog(owner.getScene().getWindow());
    return Optional.ofNullable(chosen)
        .map(file -> named(file.toPath(), dialogue.getSelectedExtensionFilter()));
  }

  /** Some systems leave the ending to the program: the kind that was chosen has the last word. */
  static Path named(Path file, @Nullable ExtensionFilter kind) {
    String name = String.valueOf(file.getFileName());
    if (kind == null
        || kind.getExtensions().stream().anyMatch(each -> name.endsWith(each.replace(ANY, "")))) {
      return file;
    }
    String bare = name.endsWith(".csv") ? name.substring(0, name.length() - 4) : name;
    return file.resolveSibling(bare + kind.getExtensions().getFirst().replace(ANY, ""));
  }
}
