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
 */
record TableForm(
    char separator, char decimal, TextEncoding encoding, boolean isRagged, Set<String> missing) {
  /** Our own tables: RFC 4180 in UTF-8. */
  static final TableForm OWN = new TableForm(',', '.', TextEncoding.UTF_8, false, Set.of());

  TableForm {
    missing = Set.copyOf(missing);
  }

  /** Whether a cell holds no sample. */
  boolean isMissing(String cell) {
    return cell.isBlank() || (!missing.isEmpty() && missing.contains(cell.strip()));
  }
}
