package steadypull.vehicle;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * A vehicle as it is fitted from some moment on, and what its trips have taught since. Immutable.
 *
 * @param fitted what was fitted then, in the owner's words; empty: as the vehicle came
 * @param since trips that begin from here on belong to it
 * @param touched circuits that the fitting may have changed
 * @param learnt what its trips have taught, and what carried over from before
 */
public record Configuration(String fitted, Instant since, Set<Circuit> touched, LearntHeat learnt) {
  /** As a vehicle comes. */
  public static final Configuration FIRST =
      new Configuration("", Instant.EPOCH, Set.of(), LearntHeat.NOTHING);

  private static final int LONGEST_WORDS = 200;

  public Configuration {
    Objects.requireNonNull(since);
    Objects.requireNonNull(learnt);
    touched = Collections.unmodifiableSortedSet(new TreeSet<>(touched));
    if (fitted.length() > LONGEST_WORDS || !fitted.equals(fitted.strip())) {
      throw new IllegalArgumentException(
          "What was fitted is told in at most %d letters without blanks around, found %d"
              .formatted(LONGEST_WORDS, fitted.length()));
    }
  }

  /** The same, knowing something else. */
  public Configuration withLearnt(LearntHeat other) {
    return new Configuration(fitted, since, touched, other);
  }

  /**
   * Configurations with what trips have taught of them. What a configuration knows already (from a
   * vehicle file, say) stays in place of trips up to the last that taught it; a configuration that
   * knows nothing begins with what the one before had learnt, its own circuits opened again.
   *
   * @param kept in the order in which they began; may be empty
   * @param lessons in the order in which the trips began
   */
  public static List<Configuration> taught(List<Configuration> kept, List<LessonOfTrip> lessons) {
    List<Configuration> all = kept.isEmpty() && !lessons.isEmpty() ? List.of(FIRST) : kept;
    List<Configuration> taught = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Instant end = i + 1 < all.size() ? all.get(i + 1).since() : Instant.MAX;
      LearntHeat before = i == 0 ? LearntHeat.NOTHING : taught.get(i - 1).learnt();
      taught.add(all.get(i).taught(before, lessons, end));
    }
    return taught;
  }

  /**
   * What a trip of that start begins with: the configuration of then, with what trips before have
   * taught, as it was known at that moment.
   *
   * @return one configuration, or none if the vehicle was as it came and nothing had been learnt
   */
  public static List<Configuration> settingOut(
      List<Configuration> kept, List<LessonOfTrip> lessons, Instant start) {
    List<Configuration> begun = kept.stream().filter(each -> !each.since().isAfter(start)).toList();
    List<LessonOfTrip> before =
        lessons.stream().filter(each -> each.start().isBefore(start)).toList();
    List<Configuration> taught = taught(begun, before);
    return taught.isEmpty()
        ? taught
        : List.of(taught.getLast().withLearnt(taught.getLast().learnt().asOf(start)));
  }

  private Configuration taught(LearntHeat before, List<LessonOfTrip> lessons, Instant end) {
    boolean isFresh = learnt.quantities().isEmpty();
    LearntHeat known = isFresh ? before.reopened(touched) : learnt;
    Instant last = isFresh ? Instant.MIN : learnt.last();
    for (LessonOfTrip lesson : lessons) {
      Instant start = lesson.start();
      if (!start.isBefore(since) && start.isBefore(end) && start.isAfter(last)) {
        known = known.after(lesson.heat(), start);
      }
    }
    return withLearnt(known);
  }
}
