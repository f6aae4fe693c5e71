package steadypull.cli;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;

/** The main command above a command; picocli sets it before a command is called. */
final class Parents {
  private Parents() {}

  /** The command line of a command under the main one, by its names. */
  static CommandLine under(SteadypullCommand main, String... names) {
    CommandLine found = main.commandLine();
    for (String name : names) {
      found = Objects.requireNonNull(found.getSubcommands().get(name), name);
    }
    return found;
  }

  static SteadypullCommand require(@Nullable SteadypullCommand parent) {
    if (parent == null) {
      throw new IllegalStateException("Commands run through SteadypullCommand.run");
    }
    return parent;
  }
}
