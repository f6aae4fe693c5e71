package steadypull.report;

import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparing;
import steadypull.compare.Comparison;
import steadypull.compare.Conditions;
import steadypull.compare.Job;
import steadypull.compare.RunFinding;
import steadypull.compare.RunSet;
import steadypull.compare.RunSource;
import steadypull.compare.TripSeconds;
import steadypull.drive.CalibrationsOfTrip;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Vehicle;

/** Comparisons of the trips of one library, which is not closed here. Any thread. */
public final class LibraryComparisons implements ComparisonDesk {
  private final TripLibrary library;
  private final Path folder;
  private final InstantSource wall;
  private final String version;

  /**
   * A desk.
   *
   * @param folder of the library, in which the workshop is told
   * @param wall tells on which day a form is made
   * @param version of the program
   */
  public LibraryComparisons(TripLibrary library, Path folder, InstantSource wall, String version) {
    this.library = library;
    this.folder = folder;
    this.wall = wall;
    this.version = version;
  }

  @Override
  public List<TripSummary> trips() throws ReportException {
    try {
      return library.trips(Optional.empty()).stream().filter(TripSummary::sealed).toList();
    } catch (LibraryException refused) {
      throw refusal(refused);
    }
  }

  @Override
  public Comparison compare(List<Chosen> chosen, Channel channel, Locale locale)
      throws ReportException {
    try {
      List<RunSource> sources = new ArrayList<>();
      int place = -1;
      for (Chosen each : inOrder(chosen)) {
        boolean isOtherSide = sources.isEmpty() || sources.getLast().side() != each.side();
        place += isOtherSide ? 1 : 0;
        TripSeconds seconds = TripSeconds.ofTrip(library, each.trip(), new CalibrationsOfTrip());
        sources.add(new RunSource(seconds, each.side(), place, Optional.empty()));
      }
      RunSet runs = RunFinding.of(sources, channel, Job.NONE, locale);
      Vehicle vehicle = sources.getLast().trip().vehicle();
      return Comparing.of(runs, channel, vehicle, Conditions.OF_THE_RUNS, locale);
    } catch (LibraryException refused) {
      throw refusal(refused);
    }
  }

  private static List<Chosen> inOrder(List<Chosen> chosen) {
    return chosen.stream().sorted(Comparator.comparing(each -> each.trip().start())).toList();
  }

  @Override
  public void write(ComparisonWords words, QuantityFormat quantities, Path file)
      throws ReportException {
    Locale locale = words.words().locale();
    LocalDate today = LocalDate.ofInstant(wall.instant(), ZoneId.systemDefault());
    Letterhead head = WorkshopFile.read(folder, Letterhead.Made.on(today, version, locale));
    ReportFile.write(
        ComparisonReport.of(words.comparison(), words.vehicle(), head, locale, quantities), file);
  }

  private static ReportException refusal(LibraryException refused) {
    return new ReportException(String.valueOf(refused.getMessage()), refused);
  }
}
