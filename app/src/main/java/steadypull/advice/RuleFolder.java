package steadypull.advice;

import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The rule files of a library: {@code rules/every-vehicle.toml}, and one for each vehicle that has
 * rules of its own. Each holds what changes. A file that is faulty leaves the rules in force that
 * it held when it was read last, of which a copy is kept beside it. Immutable.
 */
public final class RuleFolder {
  private static final String FOLDER = "rules";
  private static final String COMMON = "every-vehicle.toml";
  private static final String VEHICLE = "vehicle ";
  private static final String ENDING = ".toml";
  private static final String LAST_GOOD = ".in-force";

  private final Path folder;

  private RuleFolder(Path folder) {
    this.folder = folder;
  }

  /** The rule files of the library in a folder, which need not be there. */
  public static RuleFolder in(Path libraryFolder) {
    return new RuleFolder(libraryFolder.resolve(FOLDER));
  }

  /**
   * The rules in force.
   *
   * @param book whole rules
   * @param complaints about files that are faulty, each in four parts
   */
  public record InForce(RuleBook book, List<String> complaints) {
    public InForce {
      complaints = List.copyOf(complaints);
    }
  }

  /** Where changes for every vehicle stand. */
  public Path everyVehicle() {
    return folder.resolve(COMMON);
  }

  /** Where changes for one vehicle stand. */
  public Path ofVehicle(String vehicleName) {
    String name = URLEncoder.encode(vehicleName, StandardCharsets.UTF_8).replace('+', ' ');
    return folder.resolve(VEHICLE + name + ENDING);
  }

  /** Vehicles that have a file, by name. */
  private Map<String, Path> vehicles() {
    Map<String, Path> found = new TreeMap<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, VEHICLE + "*" + ENDING)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        name(name.substring(VEHICLE.length(), name.length() - ENDING.length()))
            .ifPresent(vehicle -> found.put(vehicle, file));
      }
    } catch (IOException | DirectoryIteratorException unreadable) {
      // Without a folder there are no files.
      return Map.of();
    }
    return found;
  }

  private static Optional<String> name(String written) {
    try {
      return Optional.of(URLDecoder.decode(written, StandardCharsets.UTF_8));
    } catch (IllegalArgumentException malformed) {
      // No vehicle's name is written so.
      return Optional.empty();
    }
  }

  /**
   * Reads the files over the shipped rules.
   *
   * @param mayWrite whether to keep a copy of what is good; false leaves the folder as it is
   */
  public InForce read(boolean mayWrite) {
    List<String> complaints = new ArrayList<>();
    RuleSet shipped = RuleSet.shipped();
    RuleSet common = changed(shipped, everyVehicle(), mayWrite, complaints).orElse(shipped);
    Map<String, RuleSet> ofVehicles = new HashMap<>();
    vehicles()
        .forEach(
            (name, file) ->
                changed(common, file, mayWrite, complaints)
                    .ifPresent(rules -> ofVehicles.put(name, rules)));
    return new InForce(new RuleBook(common, ofVehicles), complaints);
  }

  private static Optional<RuleSet> changed(
      RuleSet base, Path file, boolean mayWrite, List<String> complaints) {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      RuleSet changed = base.changedBy(file.toString(), RuleSet.load(file));
      if (mayWrite) {
        keep(file, complaints);
      }
      return Optional.of(changed);
    } catch (RuleFileException faulty) {
      Optional<RuleSet> before = before(base, file);
      complaints.add(faulty.meanwhile(before.isPresent()));
      return before;
    }
  }

  /** What the file held when it was good. */
  private static Optional<RuleSet> before(RuleSet base, Path file) {
    Path copy = copyOf(file);
    if (!Files.exists(copy)) {
      return Optional.empty();
    }
    try {
      return Optional.of(base.changedBy(copy.toString(), RuleSet.load(copy)));
    } catch (RuleFileException outdated) {
      // A later version of the program may refuse what an earlier one took: then nothing changes.
      return Optional.empty();
    }
  }

  private static void keep(Path file, List<String> complaints) {
    Path copy = copyOf(file);
    try {
      if (Files.exists(copy) && Files.mismatch(file, copy) < 0) {
        return;
      }
      Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), "rules", LAST_GOOD);
      Files.copy(file, fresh, StandardCopyOption.REPLACE_EXISTING);
      Files.move(fresh, copy, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException unwritable) {
      complaints.add(
          "Could not keep a copy of the rules in %s: expected to write %s, found %s. The rules are in force; if the file becomes faulty, the shipped ones take their place."
              .formatted(file, copy, unwritable));
    }
  }

  private static Path copyOf(Path file) {
    return file.resolveSibling(file.getFileName() + LAST_GOOD);
  }
}
