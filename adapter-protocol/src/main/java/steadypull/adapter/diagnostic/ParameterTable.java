package steadypull.adapter.diagnostic;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * The parameters of SAE J1979 service 01 that this program can read, made from rows of data.
 * Immutable.
 */
public final class ParameterTable {
  private static final Pattern COLUMNS = Pattern.compile("\\s*\\|\\s*");
  private static final NavigableMap<Integer, Parameter> PARAMETERS =
      read(PlainParameters.ROWS + SensorParameters.ROWS + ExhaustParameters.ROWS);

  private ParameterTable() {}

  /** The parameter with a number from 0 to 0xFF, or empty if the table does not have it. */
  public static Optional<Parameter> find(int number) {
    return Optional.ofNullable(PARAMETERS.get(number));
  }

  /** All parameters, by number. */
  public static List<Parameter> all() {
    return List.copyOf(PARAMETERS.values());
  }

  private static NavigableMap<Integer, Parameter> read(String rows) {
    NavigableMap<Integer, List<Row>> byNumber = new TreeMap<>();
    rows.lines()
        .map(Row::parse)
        .forEach(row -> byNumber.computeIfAbsent(row.number(), n -> new ArrayList<>()).add(row));
    NavigableMap<Integer, Parameter> parameters = new TreeMap<>();
    for (Map.Entry<Integer, List<Row>> entry : byNumber.entrySet()) {
      List<Row> ofOne = entry.getValue();
      parameters.put(
          entry.getKey(),
          new Parameter(
              entry.getKey(),
              ofOne.getFirst().length(),
              ofOne.getFirst().sources(),
              ofOne.stream().map(Row::value).toList()));
    }
    return parameters;
  }

  private record Row(int number, int length, Set<LayoutSource> sources, Parameter.Value value) {

    static Row parse(String text) {
      List<String> cells = COLUMNS.splitAsStream(text.strip()).toList();
      int number = Integer.parseInt(cells.get(0), 16);
      Parameter.Value value =
          new Parameter.Value(
              new Signal(key(cells), cells.get(3), cells.get(4)),
              Presence.parse(cells.get(5)),
              field(cells.get(6), cells.get(7)),
              fraction(cells.get(8)),
              Double.parseDouble(cells.get(9)),
              Double.parseDouble(cells.get(10)),
              Double.parseDouble(cells.get(11)));
      return new Row(
          number, Integer.parseInt(cells.get(1)), LayoutSource.ofLetters(cells.get(12)), value);
    }

    private static String key(List<String> cells) {
      String parameter = "01." + cells.get(0);
      return cells.get(2).equals("-") ? parameter : parameter + "." + cells.get(2);
    }

    private static BitField field(String position, String sign) {
      int plus = position.indexOf('+');
      return new BitField(
          Integer.parseInt(position.substring(0, plus)),
          Integer.parseInt(position.substring(plus + 1)),
          sign.equals("s"));
    }

    private static double fraction(String cell) {
      int slash = cell.indexOf('/');
      return slash < 0
          ? Double.parseDouble(cell)
          : Double.parseDouble(cell.substring(0, slash))
              / Double.parseDouble(cell.substring(slash + 1));
    }
  }
}
