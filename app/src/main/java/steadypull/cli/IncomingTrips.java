package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import steadypull.exchange.TableException;
import steadypull.exchange.TripFile;
import steadypull.store.LibraryException;
import steadypull.store.MergedTrip;
import steadypull.store.PortableTrip;
import steadypull.store.TripDetails;

/**
 * Trip files on their way into the library: all are opened, and so checked, before the first is
 * taken. One thread; close them.
 */
final class IncomingTrips implements AutoCloseable {
  private final PrintWriter notes;
  private final UnaryOperator<TripDetails> said;
  private final List<PortableTrip> opened = new ArrayList<>();

  /**
   * None yet.
   *
   * @param notes takes what is worth knowing of a trip
   * @param said what is said of the trips besides
   */
  IncomingTrips(PrintWriter notes, UnaryOperator<TripDetails> said) {
    this.notes = notes;
    this.said = said;
  }

  /** Opens a file. */
  Taking open(Path file) throws TableException, LibraryException {
    PortableTrip trip = TripFile.open(file);
    opened.add(trip);
    return Taking.of(
        Taking.Kind.TRIP,
        adder -> {
          MergedTrip merged = adder.merge(trip, said);
          String name = Printable.line(String.valueOf(file.getFileName()));
          words(merged).forEach(words -> notes.println(name + ": " + words));
          return List.of(merged.id());
        });
  }

  @Override
  public void close() {
    opened.forEach(PortableTrip::close);
  }

  private static List<String> words(MergedTrip merged) {
    List<String> words = new ArrayList<>();
    switch (merged.way()) {
      case ADDED -> {}
      case BROUGHT_BACK -> words.add("The trip had been thrown away here and is back.");
      case ALREADY_HERE -> words.add("The trip is here already.");
    }
    if (!merged.kept().isEmpty()) {
      words.add(
          "Left as it is here, though the file tells otherwise: "
              + String.join(", ", merged.kept())
              + ".");
    }
    return words;
  }
}
