package steadypull.compare;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds what was said of a run among the answers of its job. Immutable. */
record JobNotes(Job job) {
  /** What was said of a run: of it alone, then of its trip, then of its side. */
  Job.OfRun of(String source, Stretch stretch, Side side) {
    Map<Asked, String> words = new HashMap<>();
    for (Asked asked : Asked.values()) {
      job.answer(asked, side).ifPresent(answer -> words.put(asked, answer));
    }
    OptionalDouble probe = OptionalDouble.empty();
    Optional<String> leftOut = Optional.empty();
    for (boolean isOfOne : new boolean[] {false, true}) {
      for (Job.OfRun said : job.runs()) {
        if (said.atSeconds().isPresent() == isOfOne && isMeant(said, source, stretch)) {
          words.putAll(said.words());
          probe = said.probeCelsius().isPresent() ? said.probeCelsius() : probe;
          leftOut = said.leftOut().isPresent() ? said.leftOut() : leftOut;
        }
      }
    }
    return new Job.OfRun(source, OptionalDouble.of(stretch.onset()), words, probe, leftOut);
  }

  private static boolean isMeant(Job.OfRun said, String source, Stretch stretch) {
    double at = said.atSeconds().orElse(stretch.onset());
    return !said.source().isEmpty()
        && source.startsWith(said.source())
        && at >= stretch.onset()
        && at < stretch.end();
  }

  /** Outside air by somebody's own probe, else as it was read at the grille; empty if neither. */
  static OptionalDouble probe(RunNotes notes) {
    if (notes.probeCelsius().isPresent()) {
      return notes.probeCelsius();
    }
    double[] grille = {celsius(notes, Asked.GRILLE_BEFORE), celsius(notes, Asked.GRILLE_AFTER)};
    return Figures.mean(grille);
  }

  private static double celsius(RunNotes notes, Asked asked) {
    String answer = notes.words().get(asked.id());
    return answer == null ? Double.NaN : Double.parseDouble(answer);
  }

  /** The same as a run keeps it, with what its trip tells where nobody said it. */
  static RunNotes notes(Job.OfRun said, TripSeconds trip) {
    Map<String, String> words = new HashMap<>();
    if (!trip.calibrations().isEmpty()) {
      words.put(Asked.CALIBRATION_ID.id(), String.join(" ", trip.calibrations()));
    }
    said.words().forEach((asked, answer) -> words.put(asked.id(), answer));
    RunNotes notes = new RunNotes(words, said.probeCelsius());
    return probe(notes).isPresent() ? notes : new RunNotes(words, trip.noticedCelsius());
  }
}
