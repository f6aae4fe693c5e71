package steadypull.exchange;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * What a trip table holds, in the units of the channels. Immutable.
 *
 * @param channels the columns, in the order of the table, without the time
 * @param samples in time order; at one time in the order of the columns
 * @param endMicros time of the last row, microseconds since the start of the trip
 * @param conversions the headers of columns that came in another unit, as they were written
 */
public record ImportedTable(
    List<Channel> channels, List<Sample> samples, long endMicros, List<String> conversions) {
  public ImportedTable {
    channels = List.copyOf(channels);
    samples = List.copyOf(samples);
    conversions = List.copyOf(conversions);
  }
}
