package steadypull.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.report.ComparisonDesk;
import steadypull.report.ComparisonWords;
import steadypull.store.TripSummary;

/** A desk without trips, for stories that compare none. */
final class NoComparisons implements ComparisonDesk {
  @Override
  public List<TripSummary> trips() {
    return List.of();
  }

  @Override
  public Comparison compare(List<Chosen> chosen, Channel channel, Locale locale) {
    throw new AssertionError("Nothing was chosen");
  }

  @Override
  public void write(ComparisonWords words, QuantityFormat quantities, Path file) {
    throw new AssertionError("Nothing was compared");
  }
}
