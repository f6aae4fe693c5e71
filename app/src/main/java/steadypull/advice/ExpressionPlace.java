package steadypull.advice;

import java.util.List;
import org.tomlj.TomlPosition;

/**
 * Finds where a place inside a string value lies in the file. The parser knows only where the key
 * stands; escapes inside a basic string shift the column, literal strings are exact.
 *
 * @param line line of the value's first character, 1 is the first
 * @param column its column, 1 is the first
 */
record ExpressionPlace(int line, int column) {

  static ExpressionPlace of(List<String> lines, TomlPosition key) {
    String line = lines.get(key.line() - 1);
    int equals = line.indexOf('=', key.column() - 1);
    int open = equals + 1;
    while (open < line.length() && Character.isWhitespace(line.charAt(open))) {
      open++;
    }
    if (!isTripled(line, open)) {
      return new ExpressionPlace(key.line(), open + 2);
    }
    boolean startsBelow = line.substring(open + 3).isEmpty();
    return startsBelow
        ? new ExpressionPlace(key.line() + 1, 1)
        : new ExpressionPlace(key.line(), open + 4);
  }

  RuleFault place(ConditionCompiler.Fault fault) {
    return fault.line() == 1
        ? new RuleFault(line, column + fault.column(), fault.message())
        : new RuleFault(line + fault.line() - 1, fault.column() + 1, fault.message());
  }

  private static boolean isTripled(String line, int open) {
    return line.startsWith("'''", open) || line.startsWith("\"\"\"", open);
  }
}
