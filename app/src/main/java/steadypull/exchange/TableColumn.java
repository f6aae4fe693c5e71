package steadypull.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.NearMatch;
import steadypull.channel.UnitConversion;

/**
 * One column of a table: which channel it feeds and how its unit becomes the channel's.
 *
 * @param header as written in the table
 */
record TableColumn(String header, Channel channel, UnitConversion conversion) {
  static final String TIME = "time[s]";

  /** The columns behind the time, in the order of the header line. */
  static List<TableColumn> ofHeaderLine(Path file, long line, List<String> cells)
      throws TableException {
    requireTime(new CellPlace(file, line, 1, ""), cells);
    List<TableColumn> columns = new ArrayList<>();
    Map<Channel, Integer> places = new HashMap<>();
    for (int index = 1; index < cells.size(); index++) {
      CellPlace place = new CellPlace(file, line, index + 1, "");
      TableColumn column = ofHeader(cells.get(index).strip(), place);
      Integer earlier = places.put(column.channel, index + 1);
      if (earlier != null) {
        throw place.refusal(
            "each channel once",
            CellPlace.quoted(column.header) + ", which column " + earlier + " has already");
      }
      columns.add(column);
    }
    return columns;
  }

  private static void requireTime(CellPlace place, List<String> cells) throws TableException {
    String first = cells.getFirst().strip();
    if (first.equals(TIME)) {
      return;
    }
    String advice = "";
    if (cells.size() == 1 && (first.contains(";") || first.contains("\t"))) {
      advice = " Fields are separated by commas.";
    }
    throw place.refusal("the header " + TIME, whatIs(first), advice);
  }

  private static TableColumn ofHeader(String header, CellPlace place) throws TableException {
    Channel written =
        Channel.ofHeader(header)
            .filter(channel -> header.indexOf('\uFFFD') < 0)
            .orElseThrow(
                () -> place.refusal("a header of the form id[unit]", whatIs(header), near(header)));
    Channel channel = Channels.find(written.id()).orElse(written);
    UnitConversion conversion =
        UnitConversion.between(written.unit(), channel.unit())
            .orElseThrow(
                () ->
                    place.refusal(
                        "one of the units "
                            + String.join(", ", UnitConversion.unitsFor(channel.unit()))
                            + " for "
                            + channel.id(),
                        CellPlace.quoted(header)));
    return new TableColumn(header, channel, conversion);
  }

  private static String near(String header) {
    return NearMatch.question(header, Channels.all().stream().map(Channel::header).toList());
  }

  private static String whatIs(String header) {
    return header.indexOf('\uFFFD') >= 0
        ? "bytes that are not UTF-8 in " + CellPlace.quoted(header)
        : CellPlace.quoted(header);
  }
}
