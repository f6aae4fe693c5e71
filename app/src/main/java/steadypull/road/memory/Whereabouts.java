package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import steadypull.road.FlatGround;

/**
 * The places where a vehicle may be with their probabilities, "on a road that nobody knows" among
 * them. Pipeline thread only.
 */
final class Whereabouts {
  /** In a second somebody on an unknown road comes upon a known one, or the reverse (estimated). */
  private static final double ENTERS_PER_SECOND = 0.03;

  private static final double LEAVES_PER_SECOND = 0.002;
  private static final double SAME_PLACE_METRES = 60;
  private static final double LEAST_WEIGHT = 1e-6;
  private static final int MOST_HYPOTHESES = 24;

  private List<Hypothesis> hypotheses = new ArrayList<>();
  private double unknownWeight = 1;

  /** Nobody knows where the vehicle is. */
  void lose() {
    hypotheses.clear();
    unknownWeight = 1;
  }

  /** The same places on another ground. */
  void on(FlatGround ground) {
    hypotheses.replaceAll(hypothesis -> hypothesis.on(ground));
  }

  /**
   * Lets each place go on to where the vehicle may be now; what finds no way on is on an unknown
   * road.
   */
  void goOn(Function<Hypothesis, List<Hypothesis>> step) {
    double before = hypotheses.stream().mapToDouble(Hypothesis::weight).sum();
    List<Hypothesis> there = stepped(step);
    double after = there.stream().mapToDouble(Hypothesis::weight).sum();
    unknownWeight += Math.max(0, before - after);
    hypotheses = merged(there);
  }

  /** Gives each place another weight; what is weighed less is not on an unknown road for that. */
  void weigh(Function<Hypothesis, List<Hypothesis>> weighing) {
    hypotheses = merged(stepped(weighing));
  }

  private List<Hypothesis> stepped(Function<Hypothesis, List<Hypothesis>> step) {
    List<Hypothesis> there = new ArrayList<>();
    hypotheses.forEach(hypothesis -> there.addAll(step.apply(hypothesis)));
    return there;
  }

  /** Keeps those places that are still known. */
  void keep(Function<Hypothesis, Optional<Hypothesis>> now) {
    List<Hypothesis> known = new ArrayList<>();
    for (Hypothesis hypothesis : hypotheses) {
      Optional<Hypothesis> still = now.apply(hypothesis);
      still.ifPresent(known::add);
      unknownWeight += still.isPresent() ? 0 : hypothesis.weight();
    }
    hypotheses = known;
  }

  /**
   * Some of what was on unknown roads comes upon known ones, and the reverse.
   *
   * @param found where a vehicle may be that comes upon a known road now
   * @param seconds that have passed
   */
  void enter(List<Hypothesis> found, double seconds) {
    double left = 0;
    for (int i = 0; i < hypotheses.size(); i++) {
      double leaves = hypotheses.get(i).weight() * LEAVES_PER_SECOND * seconds;
      left += leaves;
      hypotheses.set(i, hypotheses.get(i).weighed(1 - LEAVES_PER_SECOND * seconds));
    }
    double enters = found.isEmpty() ? 0 : unknownWeight * ENTERS_PER_SECOND * seconds;
    unknownWeight += left - enters;
    double often = found.stream().mapToDouble(Whereabouts::often).sum();
    for (Hypothesis candidate : found) {
      place(candidate.weighed(enters * often(candidate) / often));
    }
  }

  /** A road that was driven often is likelier. */
  private static double often(Hypothesis candidate) {
    return candidate.stretch().from().passes() + 0.5;
  }

  private void place(Hypothesis candidate) {
    for (int i = 0; i < hypotheses.size(); i++) {
      Hypothesis known = hypotheses.get(i);
      if (known.isBeside(candidate)
          && known.spot().distanceTo(candidate.spot()) < SAME_PLACE_METRES) {
        hypotheses.set(
            i, new Hypothesis(known.stretch(), known.share(), known.weight() + candidate.weight()));
        return;
      }
    }
    hypotheses.add(candidate);
  }

  private static List<Hypothesis> merged(List<Hypothesis> all) {
    all.sort(Comparator.comparingDouble(Hypothesis::weight).reversed());
    List<Hypothesis> merged = new ArrayList<>();
    for (Hypothesis one : all) {
      int same = 0;
      while (same < merged.size() && !merged.get(same).isOnSameStretch(one)) {
        same++;
      }
      if (same < merged.size()) {
        Hypothesis kept = merged.get(same);
        merged.set(
            same, new Hypothesis(kept.stretch(), kept.share(), kept.weight() + one.weight()));
      } else if (merged.size() < MOST_HYPOTHESES) {
        merged.add(one);
      }
    }
    return merged;
  }

  /** Makes the probabilities add up to 1, and leaves out what is next to impossible. */
  void normalise() {
    double all = total();
    hypotheses.removeIf(hypothesis -> hypothesis.weight() < LEAST_WEIGHT * all);
    hypotheses.replaceAll(hypothesis -> hypothesis.weighed(1 / all));
    unknownWeight = Math.max(LEAST_WEIGHT * 100, unknownWeight / all);
  }

  private double total() {
    return unknownWeight + hypotheses.stream().mapToDouble(Hypothesis::weight).sum();
  }

  /** Where the vehicle most likely is; empty where nothing was recognised. */
  Optional<Hypothesis> likeliest() {
    return hypotheses.stream().max(Comparator.comparingDouble(Hypothesis::weight));
  }

  /** How likely the vehicle is there or just beside, 0 to 1. */
  double sureness(Hypothesis place) {
    return hypotheses.stream().filter(place::isBeside).mapToDouble(Hypothesis::weight).sum()
        / total();
  }

  /** The places with their probabilities as weights, 0 to 1; with unknown roads they make 1. */
  List<Hypothesis> odds() {
    double all = total();
    return hypotheses.stream()
        .map(
            hypothesis ->
                new Hypothesis(hypothesis.stretch(), hypothesis.share(), hypothesis.weight() / all))
        .toList();
  }
}
