package steadypull.cli;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import steadypull.store.KnownHeat;
import steadypull.store.LibraryException;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.Fitting;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.Vehicle;

/** What {@code vehicle} is told of how the vehicle is fitted, and what it shall forget. */
final class LearntOptions {
  @Option(
      names = "--fitted",
      paramLabel = "TEXT",
      converter = Words.class,
      description = {
        "Something was fitted now, such as \"second charge",
        "cooler\": its circuit is learnt anew from the next trip",
        "on, what it cannot touch carries over."
      })
  private @Nullable String fitted;

  @Option(
      names = "--touches",
      paramLabel = "CIRCUIT",
      split = ",",
      converter = WordOption.CircuitWord.class,
      description = {
        "Which circuits --fitted changed, in place of what its",
        "words say: charge-air, compressor, engine-coolant,",
        "engine-oil, gearbox, exhaust."
      })
  private List<Circuit> touches = new ArrayList<>();

  @Option(
      names = "--forget-learnt",
      description = {
        "Forgets what trips up to now have taught of its",
        "cooling; what it is fitted with stays."
      })
  private boolean forgets;

  /** What was fitted, on a line that is not too long to be read. */
  static final class Words implements ITypeConverter<String> {
    private static final int LONGEST = 200;

    @Override
    public String convert(String text) {
      String words = new PlainText.Name().convert(text).strip();
      if (words.length() > LONGEST) {
        throw new TypeConversionException(
            "expected at most %d letters, found %d".formatted(LONGEST, words.length()));
      }
      return words;
    }
  }

  /** Refuses what does not go together. */
  void refuseContradictions(SteadypullCommand main) {
    if (!touches.isEmpty() && fitted == null) {
      throw Misuse.of(
          main, "vehicle", "--fitted beside --touches", "--touches alone", "Say what was fitted");
    }
    if (forgets && fitted != null) {
      throw Misuse.of(
          main, "vehicle", "either --fitted or --forget-learnt", "both", "Do one after the other");
    }
  }

  /** Whether there is anything to do. */
  boolean saySomething() {
    return forgets || fitted != null;
  }

  /**
   * Does what was asked.
   *
   * @param vehicle known to the library
   * @return what to tell of it; empty if nothing was asked
   */
  Optional<String> apply(Vehicle vehicle, KnownHeat heat, Instant now) throws Exception {
    if (forgets) {
      return Optional.of(forgotten(vehicle.name(), heat.forget(vehicle.name())));
    }
    return fitted == null ? Optional.empty() : Optional.of(fit(vehicle, heat, fitted, now));
  }

  private static String forgotten(String name, int trips) {
    return trips == 0
        ? "No trip had taught anything of \"%s\"; from now on they do.".formatted(name)
        : "Forgot what %s had taught of \"%s\". Trips from now on teach anew."
            .formatted(Counted.of(trips, "trip", "trips"), name);
  }

  private String fit(Vehicle vehicle, KnownHeat heat, String words, Instant now)
      throws LibraryException, CommandFailure {
    Set<Circuit> touched =
        touches.isEmpty() ? Fitting.touched(words) : new LinkedHashSet<>(touches);
    Instant since = now.truncatedTo(ChronoUnit.MICROS);
    Configuration next = new Configuration(words, since, touched, LearntHeat.NOTHING);
    if (!vehicle.configuration().since().isBefore(since)) {
      throw new CommandFailure(
          "Could not keep what was fitted to \"%s\": expected a moment after the last fitting, %s, found %s. Set this machine's clock right, then say it again."
              .formatted(vehicle.name(), vehicle.configuration().since(), since));
    }
    heat.fit(vehicle.name(), next);
    return "From the next trip on \"%s\" counts as fitted with: %s. Learnt anew: %s. If that is wrong, say --touches too."
        .formatted(vehicle.name(), words, HeatText.circuits(next));
  }
}
