package steadypull.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** The main command above a command; picocli sets it before a command is called. */
final class Parents {
  private Parents() {}

  /** The command line of a command itself. */
  static CommandLine commandLine(@Nullable CommandSpec spec) {
    if (spec == null) {
      throw new IllegalStateException("Commands run through SteadypullCommand.run");
    }
    return spec.commandLine();
  }

  static SteadypullCommand require(@Nullable SteadypullCommand parent) {
    if (parent == null) {
      throw new IllegalStateException("Commands run through SteadypullCommand.run");
    }
    return parent;
  }
}
