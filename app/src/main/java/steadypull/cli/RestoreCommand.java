package steadypull.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.store.LibraryRestore;

/** Puts a backup in the place of the library. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    header = "Puts a backup in the place of the library.",
    description =
        "The backup is verified first. The present library is set aside under a dated name, never"
            + " deleted. Not while something records or the window is open.")
final class RestoreCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "What \"steadypull backup\" has written.")
  private Path file = Path.of("");

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    LibraryRestore.Restored restored =
        LibraryRestore.restore(file, main.libraryFolder(), main.program().wall().instant());
    main.out()
        .printf(
            "Restored %s from %s%s.%n",
            Counted.trips(restored.trips()),
            file,
            restored.taken().map(taken -> ", a backup of " + taken).orElse(""));
    restored
        .setAside()
        .ifPresent(aside -> main.out().printf("The library that was here is now %s.%n", aside));
    main.out().flush();
    return 0;
  }
}
