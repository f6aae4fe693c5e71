package steadypull.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.store.Backup;
import steadypull.store.TripLibrary;

/** Copies the library into one file. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    header = "Copies the library into one file, also while recording.",
    description =
        "An earlier backup of that name is replaced once the new one is complete; another file only"
            + " with --overwrite.")
final class BackupCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Where to write, such as steadypull.backup.")
  private Path to = Path.of("");

  @Option(names = "--overwrite", description = "Replaces FILE whatever it is.")
  private boolean overwrite;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibraryToRead()) {
      Backup backup = library.backupTo(to, main.program().wall().instant(), overwrite);
      main.out()
          .printf(
              "Copied %s with %s to %s (%d bytes).%n",
              Counted.trips(backup.trips()),
              Counted.samples(backup.samples()),
              backup.file(),
              backup.octets());
      main.out().flush();
    }
    return 0;
  }
}
