package steadypull.cli;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.store.Forgotten;
import steadypull.store.KnownRoads;
import steadypull.store.QuietPlace;
import steadypull.store.TripLibrary;

/** Clears the memory of roads, everywhere or around a place. */
@Command(
    name = "forget",
    mixinStandardHelpOptions = true,
    header = "Clears the memory of roads.",
    description =
        "The roads are forgotten for good; trips stay as they are, with their positions, and teach"
            + " nothing of it again. Backups and salvaged libraries keep what they hold. What was"
            + " forgotten is told on standard output.")
final class ForgetCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @ArgGroup(multiplicity = "1")
  private Wish wish = new Wish();

  /** One of them, and only one. */
  static final class Wish {
    @Option(
        names = "--around",
        paramLabel = "LAT,LON,RADIUS_M",
        converter = QuietPlaceOption.class,
        description = {
          "Forgets the roads around a place, such as a home, and",
          "keeps none there from now on. Degrees of WGS 84, 1 to",
          "50000 m."
        })
    private @Nullable QuietPlace around;

    @Option(
        names = "--roads",
        description = "Forgets all roads; what is driven from now on is learned.")
    private boolean roads;

    @Option(names = "--list", description = "Lists the places that are kept out.")
    private boolean list;

    @Option(
        names = "--remember-again",
        paramLabel = "N",
        description = {
          "Learns roads again at the place of that number in the",
          "list, from trips that come."
        })
    private @Nullable Integer rememberAgain;
  }

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = wish.list ? main.openLibraryToRead() : main.openLibrary()) {
      answer(main, library.roads());
    }
    main.out().flush();
    return 0;
  }

  private void answer(SteadypullCommand main, KnownRoads roads) throws Exception {
    QuietPlace around = wish.around;
    Integer number = wish.rememberAgain;
    if (around != null) {
      main.out()
          .println(
              told(main, roads.forget(around), "No road was remembered there.")
                  + " No road is kept there any more.");
    } else if (number != null) {
      rememberAgain(main, roads, number);
    } else if (wish.list) {
      list(main, roads.quietPlaces());
    } else if (wish.roads) {
      main.out().println(told(main, roads.forgetAll(), "No road was remembered."));
    }
  }

  /** The two ways of a road count each for itself. */
  private static String told(SteadypullCommand main, Forgotten forgotten, String nothing) {
    if (forgotten.pieces() == 0 && forgotten.climbs() == 0) {
      return nothing;
    }
    return "Forgot %s of road, both ways together, in %s, and %s."
        .formatted(
            main.format().distance(forgotten.metres()),
            Counted.of(forgotten.pieces(), "piece", "pieces"),
            Counted.of(forgotten.climbs(), "climb", "climbs"));
  }

  private static void rememberAgain(SteadypullCommand main, KnownRoads roads, int number)
      throws Exception {
    List<QuietPlace> before = roads.quietPlaces();
    if (number < 1 || number > before.size() || !roads.rememberAgain(number)) {
      throw new CommandFailure(
          "Could not learn roads again at place %d: expected the number of a place that is kept out, of which there are %d, found another. forget --list shows them."
              .formatted(number, before.size()));
    }
    main.out().println("Roads there are learned again, from trips that come.");
  }

  private static void list(SteadypullCommand main, List<QuietPlace> places) {
    if (places.isEmpty()) {
      main.err().println("No place is kept out of the memory of roads.");
      main.err().flush();
    }
    for (int i = 0; i < places.size(); i++) {
      QuietPlace place = places.get(i);
      main.out()
          .println(
              String.format(
                  Locale.ROOT,
                  "%d  %.6f,%.6f,%s",
                  i + 1,
                  place.latitudeDegrees(),
                  place.longitudeDegrees(),
                  plain(place.radiusMetres())));
    }
  }

  /** Without a fraction that says nothing. */
  private static String plain(double metres) {
    return metres == Math.rint(metres)
        ? String.format(Locale.ROOT, "%.0f", metres)
        : String.format(Locale.ROOT, "%.1f", metres);
  }
}
