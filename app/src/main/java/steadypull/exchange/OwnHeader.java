package steadypull.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import steadypull.channel.Channel;

/** Understands the header of our own tables, and refuses a foreign one with what may be meant. */
final class OwnHeader {
  static final String TIME = "time[s]";
  private static final int MOST_TOLD = 20;
  private static final String TO_MAP =
      " A table of another program comes in through a mapping: \"import FILE --propose-map\" writes"
          + " a first guess, \"--map MAP.toml\" takes it.";

  private final Path file;
  private final long line;
  private final List<String> cells;

  OwnHeader(Path file, long line, List<String> cells) {
    this.file = file;
    this.line = line;
    this.cells = cells.stream().map(String::strip).toList();
  }

  static boolean isOwn(List<String> cells) {
    return cells.getFirst().strip().equals(TIME);
  }

  TableLayout layout() throws TableException {
    if (!isOwn(cells)) {
      throw place(0)
          .refusal(
              "the header " + TIME,
              CellPlace.whatIs(cells.getFirst()),
              separatorAdvice() + TO_MAP + others(1));
    }
    Map<Channel, Integer> places = new HashMap<>();
    List<TableColumn> columns = new ArrayList<>();
    for (int index = 1; index < cells.size(); index++) {
      TableColumn column = TableColumn.of(cells.get(index), index, written(index), false);
      refuseTwice(places.put(column.channel(), index), index);
      columns.add(column);
    }
    return new TableLayout(
        false,
        TableForm.OWN,
        TimeForm.OWN,
        0,
        TIME,
        OptionalInt.empty(),
        false,
        cells.size(),
        columns,
        OptionalInt.empty());
  }

  private String separatorAdvice() {
    String only = cells.size() == 1 ? cells.getFirst() : "";
    return only.contains(";") || only.contains("\t") ? " Fields are separated by commas." : "";
  }

  private Channel written(int index) throws TableException {
    String header = cells.get(index);
    Channel written =
        understood(header)
            .orElseThrow(
                () ->
                    place(index)
                        .refusal(
                            "a header of the form id[unit]",
                            CellPlace.whatIs(header),
                            ColumnHeader.near(header) + TO_MAP + others(index + 1)));
    Optional<String> fault = ColumnHeader.unitFault(written);
    if (fault.isPresent()) {
      throw new TableException("%s: %s. Nothing was taken.".formatted(place(index), fault.get()));
    }
    return written;
  }

  private void refuseTwice(@Nullable Integer earlier, int index) throws TableException {
    if (earlier != null) {
      throw place(index)
          .refusal(
              "each channel once",
              CellPlace.quoted(cells.get(index))
                  + ", which column "
                  + (earlier + 1)
                  + " has already");
    }
  }

  /** The further headers that are not understood, a line each. */
  private String others(int from) {
    List<String> told =
        IntStream.range(from, cells.size())
            .filter(index -> understood(cells.get(index)).isEmpty())
            .mapToObj(this::told)
            .toList();
    String more =
        told.size() > MOST_TOLD ? "\n  and %d more".formatted(told.size() - MOST_TOLD) : "";
    return String.join("", told.subList(0, Math.min(MOST_TOLD, told.size())))
        + more
        + (told.isEmpty() ? "" : "\n");
  }

  private String told(int index) {
    return "\n  column %d: %s is not understood.%s"
        .formatted(
            index + 1, CellPlace.whatIs(cells.get(index)), ColumnHeader.near(cells.get(index)));
  }

  private static Optional<Channel> understood(String header) {
    return Channel.ofHeader(header).filter(channel -> header.indexOf('\uFFFD') < 0);
  }

  private CellPlace place(int index) {
    return new CellPlace(file, line, index + 1, "");
  }
}
