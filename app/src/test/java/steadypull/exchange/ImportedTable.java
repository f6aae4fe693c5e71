package steadypull.exchange;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/** What a whole table of our own form holds, in memory. Immutable. */
record ImportedTable(
    List<Channel> channels, List<Sample> samples, long endMicros, List<String> conversions) {
  ImportedTable {
    channels = List.copyOf(channels);
    samples = List.copyOf(samples);
    conversions = List.copyOf(conversions);
  }

  static ImportedTable read(Path file) throws TableException {
    IncomingTable table = TripTable.open(file);
    List<Sample> samples = new ArrayList<>();
    long endMicros = table.read(samples::add, TransferWatch.NONE);
    return new ImportedTable(table.channels(), samples, endMicros, table.conversions());
  }
}
