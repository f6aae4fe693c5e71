package steadypull.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import steadypull.advice.RuleFileException;
import steadypull.advice.RuleSet;

/** The rules by which a trip is judged, as an option that several commands share. */
final class RulesOption {
  @Option(
      names = "--rules",
      paramLabel = "FILE",
      description = "Rules in place of the shipped ones.")
  private @Nullable Path rules;

  /** The rules that were named, or the shipped ones. */
  RuleSet inForce() throws RuleFileException, CommandFailure {
    Path file = rules;
    if (file == null) {
      return RuleSet.shipped();
    }
    if (!Files.exists(file)) {
      throw new CommandFailure(
          "Could not read rules from %s: expected a rule file, found no file of that name. Check the path."
              .formatted(file));
    }
    return RuleSet.load(file);
  }
}
