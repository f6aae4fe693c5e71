package steadypull.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.drive.WholeTrip;
import steadypull.exchange.VehicleFile;
import steadypull.review.RigCheck;
import steadypull.review.RigWords;
import steadypull.road.load.RigFinding;
import steadypull.store.TripDamage;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** Shows one trip, changes what is said of it, throws it away. */
@Command(
    name = "trip",
    mixinStandardHelpOptions = true,
    header = "Shows a trip in full, or changes what is said of it.",
    description =
        "Changes are told on standard error. What was recorded never changes; an empty text takes"
            + " back what was said.")
final class TripCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "TRIP", description = "Id of the trip, or a unique beginning of it.")
  private String trip = "";

  @Mixin private DetailOptions details = new DetailOptions();

  @Option(
      names = "--untag",
      paramLabel = "WORD",
      converter = DetailOptions.Tag.class,
      description = "Takes a tag away.")
  private List<String> untag = new ArrayList<>();

  @Option(names = "--rig", paramLabel = "RIG.json", description = "What the vehicle towed then.")
  private @Nullable Path rig;

  @Mixin private MassOptions masses = new MassOptions();

  @Option(
      names = "--delete",
      description = "Throws the trip away, for good when the command has ended.")
  private boolean delete;

  @Option(names = "--yes", description = "Confirms --delete.")
  private boolean yes;

  @Option(names = "--json", description = "Prints an object for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    if (delete && !yes) {
      throw Misuse.of(
          main,
          "trip",
          "--yes beside --delete, because a trip is gone for good when the command has ended",
          "--delete alone",
          "Add --yes if that is what you want");
    }
    try (TripLibrary library = isChange() ? main.openLibrary() : main.openLibraryToRead()) {
      TripSummary found = library.find(trip);
      if (delete) {
        library.remove(found.id());
        main.err().printf("Threw trip %s away, for good.%n", found.id());
      } else {
        change(main, library, found);
        show(
            main,
            WholeTrip.of(library, found.id()),
            library.damage(found.id()),
            RigCheck.of(library, found));
      }
    }
    return 0;
  }

  private boolean isChange() {
    return delete
        || rig != null
        || masses.saySomething()
        || !untag.isEmpty()
        || details.saySomething();
  }

  private void show(
      SteadypullCommand main, WholeTrip whole, TripDamage damage, RigFinding weighed) {
    main.out()
        .print(
            json ? TripJson.of(whole, damage, weighed) + "\n" : text(main, whole, damage, weighed));
    main.out().flush();
  }

  private static String text(
      SteadypullCommand main, WholeTrip whole, TripDamage damage, RigFinding weighed) {
    RigWords words = new RigWords(main.locale(), main.format());
    return TripText.of(whole, damage, main.format(), words.sentences(weighed, whole.rig()));
  }

  private void change(SteadypullCommand main, TripLibrary library, TripSummary found)
      throws Exception {
    if (!isChange()) {
      return;
    }
    TripDetails changed = untagged(details.applyTo(found.details()));
    Vehicle before = library.vehicleOf(found.id());
    Vehicle corrected = before.withRig(rig(before.rig()));
    if (!changed.equals(found.details())) {
      library.describe(found.id(), changed);
    }
    if (!corrected.equals(before)) {
      library.correctVehicle(found.id(), corrected);
    }
    DetailChanges.of(found.details(), changed, before.rig(), corrected.rig())
        .forEach(main.err()::println);
    main.err().flush();
  }

  private TripDetails untagged(TripDetails tagged) {
    return tagged.withTags(tagged.tags().stream().filter(tag -> !untag.contains(tag)).toList());
  }

  private Rig rig(Rig before) throws Exception {
    return masses.applyTo(rig == null ? before : VehicleFile.readRig(rig));
  }
}
