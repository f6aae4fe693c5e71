package steadypull.drive;

import java.util.Objects;
import steadypull.road.GradeProfile;

/**
 * A climb that the vehicle is on or comes to. Immutable.
 *
 * @param profile from the climb's start to its top, or as far as it is known; one piece or more
 * @param toStartMetres how far it is to the start; negative on the climb
 * @param isTopKnown whether the profile ends at the top
 */
public record ClimbAhead(GradeProfile profile, double toStartMetres, boolean isTopKnown) {
  public ClimbAhead {
    Objects.requireNonNull(profile);
    if (profile.size() == 0 || toStartMetres + profile.lengthMetres() < 0) {
      throw new IllegalArgumentException(
          "A climb ahead has a length and its end ahead, found %s m that begin in %s m"
              .formatted(profile.lengthMetres(), toStartMetres));
    }
  }

  /** How far it is to the top, or to where the knowledge ends; 0 or more. */
  public double toEndMetres() {
    return toStartMetres + profile.lengthMetres();
  }

  /** Whether the vehicle is on it. */
  public boolean isBegun() {
    return toStartMetres <= 0;
  }

  /** Rise over length, a fraction. */
  public double meanGrade() {
    double sum = 0;
    for (int piece = 0; piece < profile.size(); piece++) {
      sum += profile.grade(piece);
    }
    return sum / profile.size();
  }
}
