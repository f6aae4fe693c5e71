package steadypull.exchange;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes a first guess of a mapping for a foreign table, for its user to correct. Stateless. */
public final class MappingProposal {
  private MappingProposal() {}

  /**
   * The text of a mapping (TOML) guessed from header words, units and the values of the first rows.
   *
   * @throws TableException if the table cannot be read or nothing in it looks like a time
   */
  public static String of(Path file) throws TableException {
    TableGlance glance = TableGlance.at(file);
    TimeGuess time =
        TimeGuess.of(glance.columns())
            .orElseThrow(
                () ->
                    CellPlace.ofLine(file, 1)
                        .refusal(
                            "a column with times",
                            "none in its first %d rows".formatted(glance.rows())));
    List<ColumnGlance> others =
        glance.columns().stream().filter(each -> !time.tells(each)).toList();
    StringBuilder text = new StringBuilder();
    head(text, file, glance, others);
    time(text, time);
    columns(text, others);
    return text.toString();
  }

  private static void head(
      StringBuilder text, Path file, TableGlance glance, List<ColumnGlance> others) {
    TableForm form = glance.form();
    line(text, "# A first guess from the first " + glance.rows() + " rows of " + name(file) + ".");
    line(
        text,
        "# Look through it, above all where it says \"check\", then: import FILE --map MAP.toml");
    if (form.linesBefore() > 0) {
      line(
          text,
          "# check: line %d is taken for the header; those before it are passed over"
              .formatted(form.linesBefore() + 1));
    }
    if (glance.hasNumbersForHeaders()) {
      line(
          text,
          "# check: these headers are numbers; if the table has no header line, write one above it,"
              + " or its first row is lost");
    }
    line(text, "");
    line(text, "separator = " + quoted(form.separator() == '\t' ? "tab" : form.separator() + ""));
    line(text, "decimal = " + quoted(form.decimal() + ""));
    if (form.encoding() != TextEncoding.UTF_8) {
      line(text, "encoding = " + quoted(form.encoding().word()));
    }
    if (form.isRagged()) {
      line(text, "ragged = true # some rows lack fields at their end");
    }
    if (!form.missing().isEmpty()) {
      line(
          text,
          "missing = [%s] # check: cells with these words are taken to hold no sample"
              .formatted(
                  form.missing().stream()
                      .sorted()
                      .map(MappingProposal::quoted)
                      .collect(Collectors.joining(", "))));
    }
    if (glance.isHeld(others.stream().filter(ColumnGlance::isNumeric).toList())) {
      line(
          text,
          "held = true # values seem polled in turn and repeated on the rows between: hardly ever"
              + " do two change at once");
    }
  }

  private static void time(StringBuilder text, TimeGuess time) {
    line(text, "");
    line(text, "[time]");
    line(text, "column = " + quoted(time.column().header()));
    time.dateColumn().ifPresent(date -> line(text, "date_column = " + quoted(date.header())));
    line(text, "format = " + quoted(time.format()) + comment(time.comment()));
    if (time.lacksDay()) {
      line(
          text,
          "# date = 2026-01-31 # check: the day of the first row; without it the file's is taken");
    }
    if (time.isLocal()) {
      line(
          text,
          "# zone = \"+02:00\" # check: where its clock was; without it this machine's zone is"
              + " taken");
    }
    if (time.isFarFromZero()) {
      line(text, "first_row_is_zero = true # the counter did not begin with the trip");
    }
    if (time.column().isRepeating()) {
      line(text, "repeats = true # some rows share a time");
    }
  }

  private static void columns(StringBuilder text, List<ColumnGlance> others) {
    line(text, "");
    line(text, "[columns]");
    Map<String, String> taken = new HashMap<>();
    Set<String> headers = new HashSet<>();
    for (ColumnGlance column : others) {
      if (headers.add(column.header())) {
        ColumnGuess guess = ColumnGuess.of(column, taken);
        line(
            text, quoted(column.header()) + " = " + quoted(guess.use()) + comment(guess.comment()));
      } else {
        line(
            text,
            "# check: column %d has the same header as another; rename it in the file"
                .formatted(column.index() + 1));
      }
    }
  }

  private static String comment(String words) {
    return words.isEmpty() ? "" : " # " + words;
  }

  private static String name(Path file) {
    return CellPlace.shown(Optional.ofNullable(file.getFileName()).orElse(file));
  }

  /** A basic string of TOML 1.0. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int each = 0; each < text.length(); each++) {
      char letter = text.charAt(each);
      if (letter == '"' || letter == '\\') {
        quoted.append('\\').append(letter);
      } else if (Character.isISOControl(letter)) {
        quoted.append("\\u%04X".formatted((int) letter));
      } else {
        quoted.append(letter);
      }
    }
    return quoted.append('"').toString();
  }

  private static void line(StringBuilder text, String line) {
    text.append(line).append('\n');
  }
}
