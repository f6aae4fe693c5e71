package steadypull.exchange;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;
import steadypull.channel.Channel;
import steadypull.channel.NearMatch;
import steadypull.toml.TomlText;

/** Reads the text of a mapping; collects every fault instead of stopping at the first. */
final class MappingReader {
  static final String IGNORE = "ignore";
  private static final String HELD = "held";
  private static final String DATE_COLUMN = "date_column";
  private static final String MISSING = "missing";
  private static final List<String> KEYS =
      List.of(
          "separator", "decimal", "encoding", HELD, "round", "ragged", MISSING, "time", "columns");
  private static final List<String> TIME_KEYS =
      List.of(
          "column", DATE_COLUMN, "format", "date", "zone", "first_row_is_zero", "repeats", HELD);
  private static final List<String> COLUMN_KEYS = List.of("channel", HELD);
  private static final Map<String, String> SEPARATORS =
      Map.of("tab", "\t", "comma", ",", "semicolon", ";", "blank", " ");
  private static final int LONGEST_ROUND = 1_000;

  private final MappingFields fields;
  private final TomlParseResult file;

  MappingReader(String text, String name) {
    this.fields = new MappingFields(name);
    this.file = TomlText.parse(text);
  }

  TableMapping mapping() throws TableException {
    file.errors()
        .forEach(
            error ->
                fields.fault(
                    error.position(), "expected TOML, found a fault: " + error.getMessage()));
    fields.refuseIfFaulty();
    fields.refuseUnknown(file, KEYS);
    TomlTable time = fields.table(file, "time");
    TomlTable columns = fields.table(file, "columns");
    fields.refuseUnknown(time, TIME_KEYS);
    TableForm form = form();
    TimeForm timeForm = timeForm(time);
    String timeColumn = fields.text(time, "column").orElse("");
    Optional<String> dateColumn = dateColumn(time, timeForm);
    boolean mayRepeat = fields.truth(time, "repeats", false);
    Map<String, TableMapping.Use> uses = uses(columns, isHeld(time, columns));
    OptionalInt round = round();
    fields.refuseIfFaulty();
    return new TableMapping(form, timeForm, timeColumn.strip(), dateColumn, mayRepeat, uses, round);
  }

  private TableForm form() {
    String word = fields.optionalText(file, "separator").orElse(",");
    String separator = SEPARATORS.getOrDefault(word, word);
    if (separator.length() != 1 || "\"\r\n".contains(separator)) {
      fields.fault(file, "separator", "expected one character or tab, found \"" + word + "\"");
      separator = ",";
    }
    String decimal = fields.optionalText(file, "decimal").orElse(".");
    if (!Set.of(".", ",").contains(decimal)) {
      fields.fault(file, "decimal", "expected \".\" or \",\", found \"" + decimal + "\"");
    }
    char point = decimal.equals(",") ? ',' : '.';
    return new TableForm(
        separator.charAt(0),
        point,
        encoding(),
        fields.truth(file, "ragged", false),
        fields.texts(file, MISSING),
        0);
  }

  private TextEncoding encoding() {
    String word = fields.optionalText(file, "encoding").orElse(TextEncoding.UTF_8.word());
    Optional<TextEncoding> encoding = TextEncoding.of(word);
    if (encoding.isEmpty()) {
      List<String> known = List.of(TextEncoding.values()).stream().map(TextEncoding::word).toList();
      fields.fault(
          file,
          "encoding",
          "expected one of %s, found \"%s\".%s"
              .formatted(String.join(", ", known), word, NearMatch.question(word, known)));
    }
    return encoding.orElse(TextEncoding.UTF_8);
  }

  private OptionalInt round() {
    if (!file.contains(List.of("round"))) {
      return OptionalInt.empty();
    }
    if (file.get(List.of("round")) instanceof Long rows && rows > 0 && rows <= LONGEST_ROUND) {
      return OptionalInt.of(rows.intValue());
    }
    fields.fault(file, "round", "expected whole rows from 1 to " + LONGEST_ROUND);
    return OptionalInt.empty();
  }

  private TimeForm timeForm(TomlTable time) {
    Optional<LocalDate> date = Optional.empty();
    if (time.get(List.of("date")) instanceof LocalDate day) {
      date = Optional.of(day);
    } else if (time.contains(List.of("date"))) {
      fields.fault(time, "date", "expected a day without quotes, such as 2026-07-15");
    }
    TimeForm.Zero zero =
        fields.truth(time, "first_row_is_zero", false)
            ? TimeForm.Zero.FIRST_ROW
            : TimeForm.Zero.TRIP;
    Optional<String> word = fields.text(time, "format");
    Optional<ZoneId> zone = zone(time);
    Optional<LocalDate> day = date;
    Optional<TimeForm> form = word.flatMap(each -> TimeFormWords.of(each, zero, day, zone));
    if (word.filter(TimeFormWords::lacksHalfOfDay).isPresent()) {
      fields.fault(
          time,
          "format",
          "expected hours of 24 (H), or a (AM or PM) with hours of 12 (h), found \"%s\""
              .formatted(word.get()));
    } else if (word.isPresent() && form.isEmpty()) {
      fields.fault(
          time,
          "format",
          "expected %s, found \"%s\"".formatted(TimeFormWords.EXAMPLES, word.get()));
    }
    return form.orElse(TimeForm.OWN);
  }

  /** The column of the day; its cells and those of the time are read as one text. */
  private Optional<String> dateColumn(TomlTable time, TimeForm form) {
    Optional<String> column = fields.optionalText(time, DATE_COLUMN).map(String::strip);
    if (column.isPresent() && !(form instanceof TimeForm.Clock)) {
      fields.fault(time, DATE_COLUMN, "expected a format such as \"d.M.uuuu H:mm:ss\" with it");
    }
    if (column.isPresent() && time.contains(List.of("date"))) {
      fields.fault(time, "date", "expected either date or date_column, found both");
    }
    return column;
  }

  private Optional<ZoneId> zone(TomlTable time) {
    try {
      return fields.optionalText(time, "zone").map(ZoneId::of);
    } catch (DateTimeException e) {
      fields.fault(time, "zone", "expected an offset such as \"+02:00\" or the name of a zone");
      return Optional.empty();
    }
  }

  /** Whoever adds the line at the end has it under a heading; it means the same there. */
  private boolean isHeld(TomlTable time, TomlTable columns) {
    return fields.truth(file, HELD, false)
        || fields.truth(time, HELD, false)
        || Boolean.TRUE.equals(columns.get(List.of(HELD)));
  }

  private Map<String, TableMapping.Use> uses(TomlTable columns, boolean isHeld) {
    Map<String, TableMapping.Use> uses = new HashMap<>();
    for (String header : columns.keySet()) {
      if (header.equals(HELD) && columns.get(List.of(header)) instanceof Boolean) {
        continue;
      }
      use(columns, header, isHeld)
          .filter(use -> uses.put(header.strip(), use) != null)
          .ifPresent(twice -> fields.fault(columns, header, "expected each header once"));
    }
    return uses;
  }

  private Optional<TableMapping.Use> use(TomlTable columns, String header, boolean isHeld) {
    return switch (columns.get(List.of(header))) {
      case String word when word.equals(IGNORE) -> Optional.of(new TableMapping.Use.Ignored());
      case String word -> channel(columns, header, word).map(each -> feeds(each, isHeld));
      case TomlTable table -> {
        fields.refuseUnknown(table, COLUMN_KEYS);
        boolean isItselfHeld = fields.truth(table, HELD, isHeld);
        yield fields
            .text(table, "channel")
            .flatMap(word -> channel(table, "channel", word))
            .map(each -> feeds(each, isItselfHeld));
      }
      case null, default -> {
        fields.fault(columns, header, "expected \"id[unit]\" or \"ignore\"");
        yield Optional.empty();
      }
    };
  }

  private static TableMapping.Use feeds(Channel channel, boolean isHeld) {
    return new TableMapping.Use.Feeds(channel, isHeld);
  }

  private Optional<Channel> channel(TomlTable table, String key, String word) {
    Optional<Channel> written = Channel.ofHeader(word.strip());
    Optional<String> fault =
        written.isEmpty()
            ? Optional.of(
                "expected id[unit] or ignore, found \"%s\".%s"
                    .formatted(word, ColumnHeader.near(word)))
            : ColumnHeader.unitFault(written.get());
    fault.ifPresent(found -> fields.fault(table, key, found));
    return written;
  }
}
