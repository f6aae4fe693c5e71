package steadypull.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.store.CheckReport;
import steadypull.store.LibraryCheck;

/** Verifies the library and salvages what can be read of a damaged one. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Verifies the library, and salvages what can be read.",
    description =
        "Reads everything to the last sample. What can be read of a damaged library goes into a new"
            + " one beside it; the damaged one stays as it is. Exit status: 0 all is well, 1"
            + " damaged.")
final class CheckCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(names = "--json", description = "Prints an object for machines.")
  private boolean json;

  @Option(names = "--no-salvage", description = "Only looks, and writes nothing.")
  private boolean isOnlyToLook;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    Path folder = main.libraryFolder();
    List<Path> earlier = LibraryCheck.salvages(folder);
    CheckReport report = isOnlyToLook ? LibraryCheck.look(folder) : LibraryCheck.check(folder);
    main.out().print(json ? CheckWords.json(report) : CheckWords.text(report, folder, earlier));
    main.out().flush();
    return report.isDamaged() ? 1 : 0;
  }
}
