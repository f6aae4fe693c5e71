package steadypull.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** Where the library lies when nobody says so: the platform's place for application data. */
final class LibraryPlace {
  private LibraryPlace() {}

  /**
   * Decides the library's folder.
   *
   * @param wanted folder named on the command line; comes first
   */
  static Path of(Optional<Path> wanted, Program program) {
    return wanted
        .or(() -> variable(program, "STEADYPULL_LIBRARY"))
        .orElseGet(() -> platformPlace(program));
  }

  private static Path platformPlace(Program program) {
    String system = program.operatingSystem().toLowerCase(Locale.ROOT);
    Path home = Path.of(program.homeFolder());
    if (system.contains("mac")) {
      return home.resolve("Library/Application Support/Steadypull");
    }
    if (system.contains("win")) {
      return variable(program, "APPDATA")
          .orElse(home.resolve("AppData/Roaming"))
          .resolve("Steadypull");
    }
    return variable(program, "XDG_DATA_HOME")
        .orElse(home.resolve(".local/share"))
        .resolve("steadypull");
  }

  private static Optional<Path> variable(Program program, String name) {
    return Optional.ofNullable(program.environment().get(name))
        .filter(value -> !value.isBlank())
        .map(Path::of);
  }
}
