package steadypull.exchange;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;

/**
 * Finds the place at which a table stops being one, by reading it once more, field by field (RFC
 * 4180, section 2). One thread.
 */
final class RecordFault {
  private final Path file;
  private final TableForm form;
  private final int mostFields;
  private final int longestField;
  private long line = 1;
  private int column = 1;
  private int length;
  private long quoteLine;
  private boolean isQuoted;
  private boolean isClosed;

  RecordFault(Path file, TableForm form, int mostFields, int longestField) {
    this.file = file;
    this.form = form;
    this.mostFields = mostFields;
    this.longestField = longestField;
  }

  /**
   * The refusal of the first fault.
   *
   * @param lastLine first line of the last record that was whole; told if no field is to blame
   */
  TableException refusal(long lastLine) throws IOException, TableException {
    try (TableBytes bytes = TableBytes.open(file);
        Reader text = bytes.text(form.encoding())) {
      for (int letter = text.read(); letter >= 0; letter = text.read()) {
        pass((char) letter);
        if (column > mostFields) {
          return place(
              "at most " + mostFields + " fields", "more", " Look for a missing line end.");
        }
        if (length > longestField) {
          return place(
              "a field of at most " + longestField + " characters", "a longer one", advice());
        }
        if (isClosed && length > 0) {
          return place(
              "a separator or a line end after the quote",
              "more text",
              " Double each quote within a field.");
        }
      }
    }
    return CellPlace.ofLine(file, lastLine)
        .refusal("a record of fields after this line", "one that is too long", advice());
  }

  private String advice() {
    return isQuoted
        ? " Look for a missing quote: one opens in line " + quoteLine + "."
        : " Look for a missing separator or line end.";
  }

  private TableException place(String expected, String found, String advice) {
    return new CellPlace(file, isQuoted ? quoteLine : line, column, "")
        .refusal(expected, found, advice);
  }

  /** Lines before the header are no records. */
  private void pass(char letter) {
    if (line > form.linesBefore()) {
      take(letter);
    } else {
      line += letter == '\n' ? 1 : 0;
    }
  }

  private void take(char letter) {
    if (isQuoted) {
      quoted(letter);
    } else if (letter == '"' && isClosed) {
      isQuoted = true;
      isClosed = false;
      length = 1;
    } else if (letter == '"' && length == 0) {
      isQuoted = true;
      quoteLine = line;
    } else if (letter == form.separator()) {
      column++;
      beginField();
    } else if (letter == '\n' || letter == '\r') {
      line += letter == '\n' ? 1 : 0;
      column = 1;
      beginField();
    } else {
      length++;
    }
  }

  private void quoted(char letter) {
    line += letter == '\n' ? 1 : 0;
    if (letter == '"') {
      isQuoted = false;
      isClosed = true;
      length = 0;
    } else {
      length++;
    }
  }

  private void beginField() {
    length = 0;
    isClosed = false;
  }
}
