package steadypull.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;
import steadypull.channel.NearMatch;

/** Lays a mapping over the header of a table. Every column must be named by it: ask, not guess. */
final class MappedHeader {
  private final Path file;
  private final long line;
  private final List<String> cells;
  private final TableMapping mapping;

  MappedHeader(Path file, long line, List<String> cells, TableMapping mapping) {
    this.file = file;
    this.line = line;
    this.cells =
        cells.stream().map(cell -> mapping.form().encoding().repaired(cell).strip()).toList();
    this.mapping = mapping;
  }

  TableLayout layout() throws TableException {
    refuseMissing();
    Map<Channel, Integer> places = new HashMap<>();
    List<TableColumn> columns = new ArrayList<>();
    int timeIndex = cells.indexOf(mapping.timeColumn());
    int dateIndex = mapping.dateColumn().map(cells::indexOf).orElse(-1);
    for (int index = 0; index < cells.size(); index++) {
      if (index != timeIndex && index != dateIndex) {
        Optional<TableColumn> column = column(index);
        if (column.isPresent()) {
          refuseTwice(places.put(column.get().channel(), index), index, column.get().channel());
          columns.add(column.get());
        }
      }
    }
    return new TableLayout(
        true,
        mapping.form(),
        mapping.time(),
        timeIndex,
        mapping.timeColumn(),
        dateIndex < 0 ? OptionalInt.empty() : OptionalInt.of(dateIndex),
        mapping.mayRepeatTime(),
        cells.size(),
        columns,
        mapping.round());
  }

  private Optional<TableColumn> column(int index) throws TableException {
    String header = cells.get(index);
    TableMapping.Use use = mapping.columns().get(header);
    return switch (use) {
      case null -> Optional.of(TableColumn.of(header, index, understood(index), false));
      case TableMapping.Use.Ignored() -> Optional.empty();
      case TableMapping.Use.Feeds(Channel written, boolean isHeld) ->
          Optional.of(TableColumn.of(header, index, written, isHeld));
    };
  }

  /** A column that the mapping does not name is taken only if its header tells it all. */
  private Channel understood(int index) throws TableException {
    String header = cells.get(index);
    return Channel.ofHeader(header)
        .filter(written -> header.indexOf('\uFFFD') < 0)
        .filter(written -> ColumnHeader.unitFault(written).isEmpty())
        .orElseThrow(
            () ->
                new CellPlace(file, line, index + 1, "")
                    .refusal(
                        "a header that the mapping names",
                        CellPlace.whatIs(header),
                        NearMatch.question(header, mapping.columns().keySet())
                            + " Name it under [columns] as \"id[unit]\" or \"ignore\"."));
  }

  private void refuseMissing() throws TableException {
    TreeSet<String> missing = new TreeSet<>(mapping.headers());
    cells.forEach(missing::remove);
    if (!missing.isEmpty()) {
      String first = missing.first();
      throw CellPlace.ofLine(file, line)
          .refusal(
              "the header " + CellPlace.quoted(first) + " that the mapping names",
              "none of that name",
              NearMatch.question(first, cells)
                  + " Fields are parted by "
                  + CellPlace.quoted(String.valueOf(mapping.form().separator()))
                  + ".");
    }
  }

  private void refuseTwice(@Nullable Integer earlier, int index, Channel channel)
      throws TableException {
    if (earlier != null) {
      throw new CellPlace(file, line, index + 1, cells.get(index))
          .refusal(
              "each channel once",
              channel.id() + ", which column " + (earlier + 1) + " has already",
              " Map one of them to \"ignore\".");
    }
  }
}
