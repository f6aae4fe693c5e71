package steadypull.exchange;

import java.util.Set;

/**
 * How the text of a table is laid out.
 *
 * @param separator what parts the fields, not a quote or a line end
 * @param decimal what parts whole from fraction: {@code .} or {@code ,}
 * @param encoding how bytes are text
 * @param isRagged whether rows may lack fields at their end
 * @param missing what stands in cells without a sample, besides nothing
 * @param linesBefore lines of the file before its header line, which are passed over
 */
record TableForm(
    char separator,
    char decimal,
    TextEncoding encoding,
    boolean isRagged,
    Set<String> missing,
    int linesBefore) {
  /** Our own tables: RFC 4180 in UTF-8. */
  static final TableForm OWN = new TableForm(',', '.', TextEncoding.UTF_8, false, Set.of(), 0);

  TableForm {
    missing = Set.copyOf(missing);
  }

  /** The same text behind so many other lines. */
  TableForm after(int lines) {
    return new TableForm(separator, decimal, encoding, isRagged, missing, lines);
  }

  /** The same text with numbers that have a comma. */
  TableForm withDecimalComma() {
    return new TableForm(separator, ',', encoding, isRagged, missing, linesBefore);
  }

  /** Whether a cell holds no sample. */
  boolean isMissing(String cell) {
    return cell.isBlank() || (!missing.isEmpty() && missing.contains(cell.strip()));
  }
}
