package steadypull.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import steadypull.advice.RuleBook;
import steadypull.advice.RuleFileException;
import steadypull.advice.RuleSet;

/** The rules by which a trip is judged, as an option that several commands share. */
final class RulesOption {
  @Option(
      names = "--rules",
      paramLabel = "FILE",
      description = {
        "Rules in place of those in force; with the line",
        "\"extends = true\" only what changes. See \"rules\"."
      })
  private @Nullable Path rules;

  /** The rules that were named, or those in force. */
  RuleBook inForce(SteadypullCommand main) throws RuleFileException, CommandFailure {
    RuleBook book = RulesInForce.read(main, /* mayWrite= */ false);
    return changed(book).orElse(book);
  }

  /** What the rules in force become by the file that was named; empty if none was. */
  Optional<RuleBook> changed(RuleBook book) throws RuleFileException, CommandFailure {
    Path file = rules;
    if (file == null) {
      return Optional.empty();
    }
    if (!Files.exists(file)) {
      throw new CommandFailure(
          "Could not read rules from %s: expected a rule file, found no file of that name. Check the path."
              .formatted(file));
    }
    RuleSet named = RuleSet.load(file);
    return Optional.of(
        named.isChanges() ? book.changedBy(file.toString(), named) : RuleBook.of(named));
  }
}
