package steadypull.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import steadypull.toml.TomlText;

/**
 * The workshop of a library: the file {@code workshop.toml} in its folder, with {@code name},
 * {@code lines} under it and the file of a {@code logo}, beside it or with a path of its own. None
 * of them has to be there. Stateless.
 */
public final class WorkshopFile {
  /** How the file is called. */
  public static final String NAME = "workshop.toml";

  private static final String WORKSHOP = "name";
  private static final String LINES = "lines";
  private static final String LOGO = "logo";
  private static final Set<String> KEYS = new TreeSet<>(Set.of(WORKSHOP, LINES, LOGO));
  private static final int MOST_LINES = 4;

  private WorkshopFile() {}

  /**
   * Reads who prints; a library without the file has a letterhead without a name.
   *
   * @param folder of the library
   * @throws ReportException if the file is there and cannot be used
   */
  public static Letterhead read(Path folder, Letterhead.Made made) throws ReportException {
    Path file = folder.resolve(NAME);
    if (!Files.isRegularFile(file)) {
      return new Letterhead("", List.of(), Optional.empty(), "", made);
    }
    TomlParseResult found = TomlText.parse(text(file));
    if (found.hasErrors()) {
      throw fault(file, "TOML", "a fault: " + found.errors().getFirst().getMessage());
    }
    for (String key : found.keySet()) {
      if (!KEYS.contains(key)) {
        throw fault(file, "one of " + String.join(", ", KEYS), "\"" + key + "\"");
      }
    }
    String logo = word(found, LOGO, file);
    return new Letterhead(
        word(found, WORKSHOP, file),
        lines(found, file),
        logo.isEmpty() ? Optional.empty() : Optional.of(Logo.read(folder.resolve(logo))),
        "",
        made);
  }

  private static String text(Path file) throws ReportException {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new ReportException(
          "Could not read %s: expected TOML in UTF-8, found a file that cannot be read as such. Write it anew, or move it away."
              .formatted(ReportFile.shown(file)),
          unreadable);
    }
  }

  private static String word(TomlParseResult found, String key, Path file) throws ReportException {
    @Nullable Object value = found.get(List.of(key));
    if (value == null) {
      return "";
    }
    if (value instanceof String word && !word.contains("\u0000")) {
      return word;
    }
    throw fault(file, key + " = words in quotes", "something else");
  }

  private static List<String> lines(TomlParseResult found, Path file) throws ReportException {
    @Nullable Object value = found.get(List.of(LINES));
    if (value == null) {
      return List.of();
    }
    if (!(value instanceof TomlArray array && array.size() <= MOST_LINES)) {
      throw fault(file, "lines = at most four texts in brackets", "something else");
    }
    List<String> lines = new ArrayList<>();
    for (Object each : array.toList()) {
      if (!(each instanceof String line)) {
        throw fault(file, "lines = texts in quotes", "something else among them");
      }
      lines.add(line);
    }
    return lines;
  }

  private static ReportException fault(Path file, String expected, String found) {
    return new ReportException(
        "Could not use %s: expected %s, found %s. Correct it, or move it away."
            .formatted(ReportFile.shown(file), expected, found.replaceAll("\\p{Cntrl}", "?")));
  }
}
