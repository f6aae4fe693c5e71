package steadypull.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.NearMatch;
import steadypull.toml.TomlText;

/** Reads the text of a rule file; collects every fault instead of stopping at the first. */
final class RuleReader {
  private static final List<String> KEYS =
      List.of(
          "id",
          "watch",
          "condition",
          "stays_while",
          "suppressed_while",
          "level",
          "on_delay_s",
          "off_delay_s",
          "deadband_degC",
          "once_s",
          "priority",
          "advise",
          "why");
  private static final String OUT = "out_of_service";
  private static final List<String> OUT_KEYS = List.of("rule", "reason");
  private static final String EXTENDS = "extends";
  private static final List<String> HEADS = List.of("rule", OUT, EXTENDS);

  /** Each is judged once a second for each of its channels. */
  private static final int MOST_RULES = 200;

  private static final String ALL_THERMAL = "thermal";
  private static final int LONGEST_DELAY_SECONDS = 600;
  private static final int WIDEST_DEADBAND_KELVIN = 50;
  private static final int LAST_PRIORITY = 9;

  private final RuleFields fields = new RuleFields();
  private final Set<String> idsSeen = new HashSet<>();
  private final List<String> lines;
  private final TomlParseResult file;
  private final ConditionCompiler forChannels =
      new ConditionCompiler(RuleVariable.namedBy(/* watchesChannels= */ true));
  private final ConditionCompiler forVehicle =
      new ConditionCompiler(RuleVariable.namedBy(/* watchesChannels= */ false));

  RuleReader(String text) {
    lines = text.lines().toList();
    file = TomlText.parse(text);
  }

  /** The faults found so far, in the file's order. */
  List<RuleFault> faults() {
    return fields.faults();
  }

  /** The rules that could be read. */
  List<Rule> rules() {
    file.errors().forEach(this::refuse);
    if (file.hasErrors()) {
      return List.of();
    }
    file.keySet().stream()
        .filter(key -> !HEADS.contains(key))
        .forEach(key -> fields.fault(file, key, unknownHead(key)));
    if (file.contains(EXTENDS) && !file.isBoolean(EXTENDS)) {
      fields.fault(file, EXTENDS, "expected true or false, found " + file.get(EXTENDS));
    }
    Optional<TomlArray> tables = tables("rule");
    if (tables.isEmpty() && !file.contains(OUT)) {
      fields.fault(TomlPosition.positionAt(1, 1), "expected tables [[rule]], found none");
    }
    if (tables.isPresent() && tables.get().size() > MOST_RULES) {
      fields.fault(
          tables.get().inputPositionOf(MOST_RULES),
          "expected at most %d rules, found %d".formatted(MOST_RULES, tables.get().size()));
      return List.of();
    }
    return each(tables, this::rule).flatMap(Optional::stream).toList();
  }

  private static String unknownHead(String key) {
    return "expected only [[rule]], [[out_of_service]] and extends, found %s.%s"
        .formatted(key, NearMatch.question(key, HEADS));
  }

  /** Whether the rules that the file does not hold stay as they are. */
  boolean isChanges() {
    return !file.hasErrors() && Boolean.TRUE.equals(file.get(EXTENDS));
  }

  /** Rules that are to take part in nothing, each with the reason. */
  List<OutOfService> outOfService() {
    return file.hasErrors() ? List.of() : each(tables(OUT), this::out).toList();
  }

  private OutOfService out(TomlTable table, TomlPosition start) {
    refuseUnknownKeys(table, OUT_KEYS);
    TomlPosition place = table.contains("rule") ? RuleFields.position(table, "rule") : start;
    return new OutOfService(
        fields.text(table, "rule", start),
        fields.text(table, "reason", start),
        place.line(),
        place.column());
  }

  private Optional<TomlArray> tables(String key) {
    return file.get(key) instanceof TomlArray tables && isTables(tables)
        ? Optional.of(tables)
        : Optional.empty();
  }

  private static <T> Stream<T> each(
      Optional<TomlArray> tables, BiFunction<TomlTable, TomlPosition, T> read) {
    return tables.stream()
        .flatMap(
            all ->
                IntStream.range(0, all.size())
                    .mapToObj(
                        index -> read.apply(all.getTable(index), all.inputPositionOf(index))));
  }

  private static boolean isTables(TomlArray found) {
    return !found.isEmpty() && found.toList().stream().allMatch(TomlTable.class::isInstance);
  }

  private void refuse(TomlParseError error) {
    fields.fault(error.position(), "this is not TOML: " + error.getMessage());
  }

  private Optional<Rule> rule(TomlTable table, TomlPosition start) {
    int faultsBefore = fields.faultCount();
    refuseUnknownKeys(table, KEYS);
    String id = id(table, start);
    List<Channel> watch = watch(table, start);
    Optional<Condition> raisesWhen = raisesWhen(table, start);
    Optional<Condition> staysWhile = staysWhile(table, raisesWhen);
    Optional<Condition> suppressedWhile =
        table.contains("suppressed_while")
            ? condition(table, "suppressed_while")
            : Optional.empty();
    Level level = level(table, start);
    Answer advise = advise(table, start);
    String why = fields.text(table, "why", start);
    double onDelay = fields.number(table, "on_delay_s", 0, LONGEST_DELAY_SECONDS);
    double offDelay = fields.number(table, "off_delay_s", 0, LONGEST_DELAY_SECONDS);
    double deadband = fields.number(table, "deadband_degC", 0, WIDEST_DEADBAND_KELVIN);
    double once = fields.number(table, "once_s", 0, LONGEST_DELAY_SECONDS);
    int priority = priority(table);
    if (fields.faultCount() > faultsBefore || raisesWhen.isEmpty() || staysWhile.isEmpty()) {
      return Optional.empty();
    }
    Condition raises = raisesWhen.get();
    Condition stays = staysWhile.get();
    return Optional.of(
        new Rule(
            id,
            watch,
            raises,
            stays,
            suppressedWhile,
            level,
            onDelay,
            offDelay,
            deadband,
            once,
            priority,
            advise,
            why,
            table.toToml()));
  }

  private void refuseUnknownKeys(TomlTable table, List<String> known) {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        String hint = NearMatch.question(key, known);
        fields.fault(table, key, "unknown key \"%s\".%s".formatted(key, hint));
      }
    }
  }

  private String id(TomlTable table, TomlPosition start) {
    String id = fields.text(table, "id", start);
    if (!id.isEmpty() && !id.replace(Rule.CHANNEL_PLACE, "x").matches("[a-z][a-z0-9-]*")) {
      fields.fault(
          table, "id", "expected lower-case words joined by -, found \"%s\"".formatted(id));
    }
    if (id.contains(Rule.CHANNEL_PLACE) && !watchesChannels(table)) {
      fields.fault(table, "id", "expected no {channel} in it, as no channel is watched");
    }
    if (!id.isEmpty() && !idsSeen.add(id)) {
      fields.fault(table, "id", "expected an id of its own, found \"%s\" again".formatted(id));
    }
    return id;
  }

  /** Whether the rule means to watch channels, be their names right or wrong. */
  private static boolean watchesChannels(TomlTable table) {
    return !(table.get("watch") instanceof TomlArray names) || !names.isEmpty();
  }

  private List<Channel> watch(TomlTable table, TomlPosition start) {
    if (!fields.has(table, "watch", start)) {
      return List.of();
    }
    if (!(table.get("watch") instanceof TomlArray names)) {
      fields.fault(table, "watch", "expected a list of channel ids, [\"thermal\"] or []");
      return List.of();
    }
    List<Channel> channels = new ArrayList<>();
    for (int index = 0; index < names.size(); index++) {
      channels.addAll(watched(String.valueOf(names.get(index)), names.inputPositionOf(index)));
    }
    return channels.stream().distinct().toList();
  }

  private List<Channel> watched(String name, TomlPosition position) {
    if (name.equals(ALL_THERMAL)) {
      return Channels.thermal();
    }
    List<Channel> found =
        Channels.thermal().stream().filter(each -> each.id().equals(name)).toList();
    if (found.isEmpty()) {
      List<String> known =
          Stream.concat(Stream.of(ALL_THERMAL), Channels.thermal().stream().map(Channel::id))
              .toList();
      String hint = NearMatch.question(name, known);
      fields.fault(position, "unknown channel \"%s\".%s".formatted(name, hint));
    }
    return found;
  }

  private Optional<Condition> raisesWhen(TomlTable table, TomlPosition start) {
    return fields.has(table, "condition", start) ? condition(table, "condition") : Optional.empty();
  }

  private Optional<Condition> staysWhile(TomlTable table, Optional<Condition> otherwise) {
    return table.contains("stays_while") ? condition(table, "stays_while") : otherwise;
  }

  private Optional<Condition> condition(TomlTable table, String key) {
    if (!(table.get(key) instanceof String text)) {
      fields.fault(table, key, "expected a condition in quotes");
      return Optional.empty();
    }
    ConditionCompiler compiler = watchesChannels(table) ? forChannels : forVehicle;
    return switch (compiler.compile(text)) {
      case ConditionCompiler.Outcome.Compiled(Condition condition) -> Optional.of(condition);
      case ConditionCompiler.Outcome.Refused(List<ConditionCompiler.Fault> found) -> {
        ExpressionPlace place = ExpressionPlace.of(lines, RuleFields.position(table, key));
        found.forEach(each -> fields.fault(place.place(each)));
        yield Optional.empty();
      }
    };
  }

  private Level level(TomlTable table, TomlPosition start) {
    String word = fields.text(table, "level", start);
    Optional<Level> level =
        Arrays.stream(Level.values()).filter(each -> each.word().equals(word)).findFirst();
    if (level.isEmpty() && !word.isEmpty()) {
      fields.fault(
          table, "level", "expected notice, caution or warning, found \"%s\"".formatted(word));
    }
    return level.orElse(Level.NOTICE);
  }

  private Answer advise(TomlTable table, TomlPosition start) {
    String word = fields.text(table, "advise", start);
    Optional<Answer> answer = Answer.of(word);
    if (answer.isEmpty() && !word.isEmpty()) {
      String words = String.join(", ", Answer.words());
      fields.fault(table, "advise", "expected one of %s, found \"%s\"".formatted(words, word));
    }
    return answer.orElse(Answer.WATCH);
  }

  private int priority(TomlTable table) {
    return table.contains("priority")
        ? (int) fields.number(table, "priority", 1, LAST_PRIORITY)
        : LAST_PRIORITY;
  }
}
