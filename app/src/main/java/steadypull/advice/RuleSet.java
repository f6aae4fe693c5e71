package steadypull.advice;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Compiled rules, ready for an {@link Advisor}. Loading takes most of a second the first time, so
 * it belongs off the screen's thread. Immutable.
 */
public final class RuleSet {
  private static final String SHIPPED = "rules.toml";

  private final List<Rule> rules;

  private RuleSet(List<Rule> rules) {
    this.rules = List.copyOf(rules);
  }

  /** The rules that come with the program. */
  public static RuleSet shipped() {
    try (InputStream stream =
        Objects.requireNonNull(RuleSet.class.getResourceAsStream(SHIPPED), SHIPPED)) {
      return parse(SHIPPED, new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException unreadable) {
      throw new UncheckedIOException("The shipped rules cannot be read", unreadable);
    } catch (RuleFileException faulty) {
      throw new IllegalStateException("The shipped rules are faulty", faulty);
    }
  }

  /**
   * Reads and checks a rule file, UTF-8.
   *
   * @throws RuleFileException if it cannot be read or any rule is faulty; the message names every
   *     fault with line and column
   */
  public static RuleSet load(Path file) throws RuleFileException {
    try {
      return parse(file.toString(), Files.readString(file));
    } catch (IOException unreadable) {
      throw new RuleFileException(file.toString(), unreadable);
    }
  }

  /**
   * Checks the text of a rule file.
   *
   * @param name what to call it in messages
   * @param text the file's content
   * @throws RuleFileException if any rule is faulty
   */
  public static RuleSet parse(String name, String text) throws RuleFileException {
    RuleReader reader = new RuleReader(text);
    List<Rule> rules = reader.rules();
    if (!reader.faults().isEmpty()) {
      throw new RuleFileException(name, reader.faults());
    }
    return new RuleSet(rules);
  }

  /** The ids as written, in the file's order; {@code {channel}} stands for a channel's word. */
  public List<String> ids() {
    return rules.stream().map(Rule::id).toList();
  }

  /**
   * What an advisory is about that a rule speaks for. Rules of one cause share one advisory:
   * another of them may escalate or ease it than raised it, and a third clear it.
   *
   * @param rule id as events tell it
   * @return empty if no rule has that id
   */
  public Optional<String> cause(String rule) {
    return rules.stream()
        .filter(each -> each.idsTold().contains(rule))
        .map(Rule::cause)
        .findFirst();
  }

  List<Rule> rules() {
    return rules;
  }
}
