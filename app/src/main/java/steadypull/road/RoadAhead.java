package steadypull.road;

import java.util.List;
import java.util.Objects;

/** What is known of the road ahead. A closed set; immutable. */
public sealed interface RoadAhead {
  /** From where it is known. */
  enum Origin {
    /** An imported route tells its elevations. */
    ROUTE,
    /** Trips led along here before, this one or others. */
    DRIVEN,
    /** Partly one, partly the other: at each piece whichever knows it better. */
    ROUTE_AND_DRIVEN
  }

  /** Nothing, or not yet. */
  record Unknown() implements RoadAhead {}

  /** Where it leads is known from a route that tells no elevation here; nobody drove it before. */
  record Ungraded() implements RoadAhead {}

  /**
   * A road that was recognised.
   *
   * @param certain as far as it leads without a choice, beginning at the vehicle
   * @param branches ways that may be taken where the certain stretch ends, likeliest first; empty
   *     where the knowledge ends
   * @param origin from where the certain stretch is known
   */
  record Known(GradeProfile certain, List<Branch> branches, Origin origin) implements RoadAhead {
    public Known {
      branches = List.copyOf(branches);
      Objects.requireNonNull(origin);
    }

    /** A road that was driven before. */
    public Known(GradeProfile certain, List<Branch> branches) {
      this(certain, branches, Origin.DRIVEN);
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
