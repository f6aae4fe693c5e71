package steadypull.advice;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.NearMatch;

/**
 * Compiled rules, ready for an {@link Advisor}. Loading takes most of a second the first time, so
 * it belongs off the screen's thread. Immutable.
 */
public final class RuleSet {
  private static final String SHIPPED = "rules.toml";

  /** More text than this is no rule file, and more rules would cost a drive its seconds. */
  private static final int LONGEST_BYTES = 200_000;

  private final List<Rule> rules;
  private final List<OutOfService> outOfService;
  private final boolean isChanges;

  private RuleSet(List<Rule> rules, List<OutOfService> outOfService, boolean isChanges) {
    this.rules = List.copyOf(rules);
    this.outOfService = List.copyOf(outOfService);
    this.isChanges = isChanges;
  }

  /** The rules that come with the program. */
  public static RuleSet shipped() {
    try {
      return parse(SHIPPED, shippedText());
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
      return parse(file.toString(), text(file));
    } catch (IOException unreadable) {
      throw new RuleFileException(file.toString(), unreadable);
    }
  }

  static String text(Path file) throws IOException {
    long bytes = Files.size(file);
    if (bytes > LONGEST_BYTES) {
      throw new IOException("a file of %d bytes, more than %d".formatted(bytes, LONGEST_BYTES));
    }
    return Files.readString(file);
  }

  /** The text of the rules that come with the program, as an example to start from. */
  public static String shippedText() {
    try (InputStream stream =
        Objects.requireNonNull(RuleSet.class.getResourceAsStream(SHIPPED), SHIPPED)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("The shipped rules cannot be read", unreadable);
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
    List<OutOfService> outOfService = reader.outOfService();
    if (!reader.faults().isEmpty()) {
      throw new RuleFileException(name, reader.faults());
    }
    return new RuleSet(rules, outOfService, reader.isChanges());
  }

  /** Whether the file says that it holds only what changes ({@code extends = true}). */
  public boolean isChanges() {
    return isChanges;
  }

  /**
   * These rules with changes: a rule of the same id takes the place of ours, others follow, and
   * what the changes take out of service is out.
   *
   * @param name of the file with the changes, for the message
   * @throws RuleFileException if the changes take a rule out of service that nobody knows
   */
  public RuleSet changedBy(String name, RuleSet changes) throws RuleFileException {
    Map<String, Rule> all = new LinkedHashMap<>();
    rules.forEach(each -> all.put(each.id(), each));
    changes.rules.forEach(each -> all.put(each.id(), each));
    List<OutOfService> out = new ArrayList<>(outOfService);
    out.addAll(changes.outOfService);
    RuleSet changed = new RuleSet(List.copyOf(all.values()), out, false);
    List<RuleFault> unknown =
        changes.outOfService.stream()
            .filter(each -> changed.rules.stream().noneMatch(each::isMeant))
            .map(changed::unknown)
            .toList();
    if (!unknown.isEmpty()) {
      throw new RuleFileException(name, unknown);
    }
    return changed;
  }

  private RuleFault unknown(OutOfService out) {
    List<String> known =
        rules.stream()
            .flatMap(each -> Stream.concat(Stream.of(each.id()), each.idsTold().stream()))
            .distinct()
            .toList();
    return new RuleFault(
        out.line(),
        out.column(),
        "unknown rule \"%s\".%s".formatted(out.rule(), NearMatch.question(out.rule(), known)));
  }

  /** Why a rule takes part in nothing; empty if it does take part. */
  Optional<OutOfService> outOfService(RuleWatch watch) {
    return outOfService.stream()
        .filter(each -> each.rule().equals(watch.rule().id()) || each.rule().equals(watch.ruleId()))
        .findFirst();
  }

  /**
   * A rule for a list of rules.
   *
   * @param id as written
   * @param level its level's word
   * @param advise what it advises
   * @param outOfService why it takes part in nothing, whole or for a channel; empty if it takes
   *     part
   * @param isChanged whether it is another than the one of the same id among the others, or is not
   *     among them
   */
  public record Listed(
      String id, String level, String advise, String outOfService, boolean isChanged) {}

  /** The rules in their order, beside others. */
  public List<Listed> listed(RuleSet others) {
    return rules.stream().map(each -> listed(each, others)).toList();
  }

  private Listed listed(Rule rule, RuleSet others) {
    String out =
        outOfService.stream()
            .filter(each -> each.isMeant(rule))
            .map(
                each ->
                    each.rule().equals(rule.id())
                        ? each.reason()
                        : each.rule() + ": " + each.reason())
            .collect(Collectors.joining("; "));
    return new Listed(
        rule.id(),
        rule.level().word(),
        rule.advise().word(),
        out,
        others.rules.stream().noneMatch(each -> each.text().equals(rule.text())));
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
