package steadypull.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.store.TripSummary;

/**
 * What people do with comparisons of kept trips. Any thread; every question may wait for the disk,
 * a comparison for some seconds. Each refusal says what was tried, found and what to do.
 */
public interface ComparisonDesk {
  /**
   * A trip that was chosen.
   *
   * @param side of the change on which it was driven
   */
  record Chosen(TripSummary trip, Side side) {}

  /** All trips that have ended, newest first. */
  List<TripSummary> trips() throws ReportException;

  /**
   * Compares what was pulled on trips; before, after and before again is told by their days.
   *
   * @param chosen at least one
   * @param locale of what is said of the runs
   */
  Comparison compare(List<Chosen> chosen, Channel channel, Locale locale) throws ReportException;

  /**
   * Writes the form of a comparison, in the language and units of the words.
   *
   * @param file its name ends in {@code .pdf} or {@code .html}
   */
  void write(ComparisonWords words, QuantityFormat quantities, Path file) throws ReportException;
}
