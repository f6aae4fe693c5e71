package steadypull.ui;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;
import org.jspecify.annotations.Nullable;
import steadypull.drive.ExportTarget;

/** The system's own dialogue for files. */
final class FileDialog implements FileChoice, ReportChoice {
  private static final String ANY = "*";
  private static final String TABLE_WITHOUT_PLACES = "trips.asTableWithoutPlaces";
  private static final String TRIP_WITHOUT_PLACES = "trips.asTripWithoutPlaces";

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
  public Optional<ExportTarget> forTrip(String tripId) {
    FileChooser dialogue = new FileChooser();
    dialogue.setTitle(words.say("trips.exportTitle"));
    dialogue.setInitialFileName(tripId + ".csv");
    dialogue
        .getExtensionFilters()
        .setAll(
            List.of(
                new ExtensionFilter(words.say("trips.asTable"), "*.csv", "*.csv.gz"),
                new ExtensionFilter(words.say("trips.asTrip"), "*.trip"),
                new ExtensionFilter(words.say("trips.asTrack"), "*.gpx"),
                new ExtensionFilter(words.say(TABLE_WITHOUT_PLACES), "*.csv", "*.csv.gz"),
                new ExtensionFilter(words.say(TRIP_WITHOUT_PLACES), "*.trip")));
    File chosen = dialogue.showSaveDialog(owner.getScene().getWindow());
    return Optional.ofNullable(chosen)
        .map(file -> target(words, file.toPath(), dialogue.getSelectedExtensionFilter()));
  }

  @Override
  public Optional<Path> forReport(String name) {
    FileChooser dialogue = new FileChooser();
    dialogue.setTitle(words.say("compare.report"));
    dialogue.setInitialFileName(name + ".pdf");
    dialogue
        .getExtensionFilters()
        .setAll(
            List.of(new ExtensionFilter("PDF", "*.pdf"), new ExtensionFilter("HTML", "*.html")));
    File chosen = dialogue.showSaveDialog(owner.getScene().getWindow());
    return Optional.ofNullable(chosen)
        .map(file -> named(file.toPath(), dialogue.getSelectedExtensionFilter()));
  }

  /** The kind that was chosen says whether places are left out. */
  static ExportTarget target(Words words, Path file, @Nullable ExtensionFilter kind) {
    String chosen = kind == null ? "" : kind.getDescription();
    boolean isWithoutPositions =
        Stream.of(TABLE_WITHOUT_PLACES, TRIP_WITHOUT_PLACES)
            .anyMatch(key -> words.say(key).equals(chosen));
    return new ExportTarget(named(file, kind), isWithoutPositions);
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
