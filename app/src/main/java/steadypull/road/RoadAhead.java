package steadypull.road;

import java.util.List;

/** What is known of the road ahead. A closed set; immutable. */
public sealed interface RoadAhead {
  /** Nothing, or not yet. */
  record Unknown() implements RoadAhead {}

  /**
   * A road that was recognised.
   *
   * @param certain as far as it leads without a choice, beginning at the vehicle
   * @param branches ways that may be taken where the certain stretch ends, likeliest first; empty
   *     where the knowledge ends
   */
  record Known(GradeProfile certain, List<Branch> branches) implements RoadAhead {
    public Known {
      branches = List.copyOf(branches);
    }
  }

  /**
   * A way that may be taken.
   *
   * @param odds probability that it is, above 0 to 1; what is missing to 1 over all branches leads
   *     where nobody has been
   * @param profile from the fork on
   */
  record Branch(double odds, GradeProfile profile) {
    public Branch {
      if (!(odds > 0 && odds <= 1)) {
        throw new IllegalArgumentException("Odds lie above 0 and up to 1, found " + odds);
      }
    }
  }
}
