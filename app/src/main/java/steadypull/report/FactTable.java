package steadypull.report;

import java.util.ArrayList;
import java.util.List;

/** Facts with their names, two abreast where they are short, so that a trip fits a page. */
final class FactTable {
  /** Letters that half a line holds (tried with the page's type). */
  private static final int HALF_LINE = 34;

  private record Fact(String name, String text) {
    boolean isShort() {
      return text.length() <= HALF_LINE;
    }
  }

  private final List<Fact> facts = new ArrayList<>();

  /** Adds a fact; one of which nothing is known is left out. */
  void add(String name, String text) {
    if (!text.isEmpty()) {
      facts.add(new Fact(name, text));
    }
  }

  /** The table; its rows are in the order in which facts were added. */
  Markup markup() {
    Markup table = new Markup().open("table", "class", "facts").open("tbody");
    for (int i = 0; i < facts.size(); i++) {
      boolean isPaired =
          i + 1 < facts.size() && facts.get(i).isShort() && facts.get(i + 1).isShort();
      table.open("tr");
      cells(table, facts.get(i), isPaired ? "1" : "3");
      if (isPaired) {
        i++;
        cells(table, facts.get(i), "1");
      }
      table.close();
    }
    return table.close().close();
  }

  private static void cells(Markup row, Fact fact, String columns) {
    row.with("td", fact.name(), "class", "soft fact").with("td", fact.text(), "colspan", columns);
  }
}
