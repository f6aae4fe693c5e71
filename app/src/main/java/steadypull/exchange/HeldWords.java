package steadypull.exchange;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Tells people how fresh values of held columns are told from repeated ones. Stateless. */
final class HeldWords {
  private HeldWords() {}

  /** A line for each group of columns that are alike. */
  static List<String> of(List<TableColumn> columns, List<Freshness> freshness) {
    Map<String, List<String>> groups = new LinkedHashMap<>();
    for (int each = 0; each < columns.size(); each++) {
      groups
          .computeIfAbsent(words(freshness.get(each)), words -> new ArrayList<>())
          .add(columns.get(each).channel().id());
    }
    return groups.entrySet().stream()
        .map(
            group ->
                group.getKey() + ": " + group.getValue().stream().collect(Collectors.joining(", ")))
        .toList();
  }

  private static String words(Freshness freshness) {
    if (freshness.period().isEmpty()) {
      return "Fresh only where the value changes, as no round could be told";
    }
    return "Fresh where the value changes, and every %d rows"
        .formatted(freshness.period().getAsInt());
  }
}
