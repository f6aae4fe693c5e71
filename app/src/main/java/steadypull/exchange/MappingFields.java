package steadypull.exchange;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;
import steadypull.channel.NearMatch;

/** Typed access to the keys of a mapping; what does not fit is noted as a fault at its place. */
final class MappingFields {
  private static final int MOST_TOLD = 10;

  private record Fault(int line, int column, String text) {}

  private final String name;
  private final List<Fault> faults = new ArrayList<>();

  MappingFields(String name) {
    this.name = name;
  }

  /** A table that must be there; an empty one, with a fault, if it is not. */
  TomlTable table(TomlTable in, String key) {
    if (in.get(List.of(key)) instanceof TomlTable table) {
      return table;
    }
    fault(in, key, "expected a table [" + key + "]");
    return Toml.parse("");
  }

  /** Text that must be there. */
  Optional<String> text(TomlTable in, String key) {
    Optional<String> text = optionalText(in, key);
    if (text.isEmpty() && !in.contains(List.of(key))) {
      fault(in, key, "expected " + key + " = \"...\", found none");
    }
    return text;
  }

  /** Text that may be there; anything else in its place is a fault. */
  Optional<String> optionalText(TomlTable in, String key) {
    Object found = in.get(List.of(key));
    if (found instanceof String text) {
      return Optional.of(text);
    }
    if (found != null) {
      fault(in, key, "expected text in quotes, found " + found);
    }
    return Optional.empty();
  }

  /**
   * Texts without blanks around them that may be there; anything else in their place is a fault.
   */
  Set<String> texts(TomlTable in, String key) {
    Set<String> texts = new TreeSet<>();
    Object found = in.get(List.of(key));
    boolean isList = found instanceof TomlArray;
    for (Object each : found instanceof TomlArray array ? array.toList() : List.of()) {
      isList &= each instanceof String;
      texts.add(String.valueOf(each).strip());
    }
    if (found != null && !isList) {
      fault(in, key, "expected texts in square brackets, such as [\"N/A\", \"-\"]");
    }
    return texts;
  }

  boolean truth(TomlTable in, String key, boolean otherwise) {
    Object found = in.get(List.of(key));
    if (found instanceof Boolean truth) {
      return truth;
    }
    if (found != null) {
      fault(in, key, "expected true or false, found " + found);
    }
    return otherwise;
  }

  void refuseUnknown(TomlTable in, List<String> known) {
    in.keySet().stream()
        .filter(key -> !known.contains(key))
        .forEach(key -> fault(in, key, unknown(key, known)));
  }

  private static String unknown(String key, List<String> known) {
    return "expected one of %s, found the unknown key \"%s\".%s"
        .formatted(String.join(", ", known), key, NearMatch.question(key, known));
  }

  void fault(TomlTable in, String key, String text) {
    fault(in.inputPositionOf(List.of(key)), text);
  }

  void fault(@Nullable TomlPosition position, String text) {
    faults.add(
        position == null
            ? new Fault(1, 1, text)
            : new Fault(position.line(), position.column(), text));
  }

  void refuseIfFaulty() throws TableException {
    if (faults.isEmpty()) {
      return;
    }
    StringBuilder told = new StringBuilder("Could not use the mapping " + name + ":");
    faults.stream()
        .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
        .limit(MOST_TOLD)
        .forEach(each -> told.append("\n  ").append(told(each)));
    if (faults.size() > MOST_TOLD) {
      told.append("\n  and %d more".formatted(faults.size() - MOST_TOLD));
    }
    throw new TableException(told.append("\nNothing was taken.").toString());
  }

  private String told(Fault fault) {
    return "%s, line %d, column %d: %s".formatted(name, fault.line(), fault.column(), fault.text());
  }
}
