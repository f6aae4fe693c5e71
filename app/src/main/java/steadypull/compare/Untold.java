package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** A comparison that tells nothing but why. Stateless. */
final class Untold {
  private static final Course NO_COURSE = new Course(new double[0], new double[0], new double[0]);

  private Untold() {}

  /** Of runs that do not do. */
  static Comparison of(RunSet runs, Store store, String why) {
    List<String> caveats = new ArrayList<>(runs.caveats());
    caveats.add(why);
    return new Comparison(
        store.channel(),
        store.isAboveOutside(),
        runs,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Verdict.NOT_PROVEN,
        Verdict.NOT_PROVEN,
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        IntStream.of(15, 30, 60, 90, 120)
            .mapToObj(
                s ->
                    new GainAt(
                        s, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), false))
            .toList(),
        Optional.empty(),
        Optional.empty(),
        noFigures(),
        noFigures(),
        NO_COURSE,
        NO_COURSE,
        NO_COURSE,
        NO_COURSE,
        0,
        NO_COURSE,
        NO_COURSE,
        caveats);
  }

  private static SideFigures noFigures() {
    return new SideFigures(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
