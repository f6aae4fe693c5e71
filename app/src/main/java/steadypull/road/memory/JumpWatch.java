package steadypull.road.memory;

import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;

/**
 * Watches whether a receiver's fixes can be where the wheels brought the vehicle. A fix farther
 * away is not believed for two minutes, nor one that stays to the last digit while the wheels turn.
 * A vehicle that stands and is elsewhere all the same was carried: on a ferry, or towed. One
 * thread.
 */
final class JumpWatch {
  /** Reflections, and what the speedometer errs, m and as a share. */
  private static final double SLACK_METRES = 60;

  private static final double SLACK_SHARE = 0.1;

  /** After that the receiver is right and what was believed before was wrong (estimated). */
  private static final double LONGEST_SECONDS = 120;

  /** Wheels that turned by less stand still, m. */
  private static final double STANDING_METRES = 0.5;

  private record Mark(PositionFix fix, double odometer) {}

  private Optional<Mark> believed = Optional.empty();
  private Optional<Mark> told = Optional.empty();
  private boolean isAside;
  private boolean wasCarried;

  /**
   * Takes a fix.
   *
   * @param odometer metres driven until then
   */
  boolean isBelievable(PositionFix fix, double odometer) {
    boolean isFrozen =
        told.filter(last -> isSame(last.fix, fix))
            .filter(last -> odometer - last.odometer > STANDING_METRES)
            .isPresent();
    if (isFrozen) {
      return false;
    }
    boolean hasJumped = told.filter(last -> isTooFar(last, fix, odometer)).isPresent();
    told = Optional.of(new Mark(fix, odometer));
    boolean isOutOfReach = believed.filter(last -> isTooFar(last, fix, odometer)).isPresent();
    // whoever drives on beside is soon within reach of where he was, so only a jump back counts
    isAside = hasJumped ? isOutOfReach : isAside;
    boolean isFar = isAside || isOutOfReach;
    boolean isStanding =
        believed.filter(last -> odometer - last.odometer < STANDING_METRES).isPresent();
    boolean isLate =
        believed.filter(last -> fix.seconds() - last.fix.seconds() > LONGEST_SECONDS).isPresent();
    wasCarried = isFar && (isStanding || isLate);
    isAside &= !wasCarried;
    if (isFar && !wasCarried) {
      return false;
    }
    // while it stands, what it moves is measured from where it came to a stand
    if (!isStanding || isFar) {
      believed = Optional.of(new Mark(fix, odometer));
    }
    return true;
  }

  /** Whether the last fix that was believed is where the wheels did not bring the vehicle. */
  boolean wasCarried() {
    return wasCarried;
  }

  private static boolean isSame(PositionFix one, PositionFix other) {
    return one.latitudeDegrees() == other.latitudeDegrees()
        && one.longitudeDegrees() == other.longitudeDegrees();
  }

  private static boolean isTooFar(Mark last, PositionFix fix, double odometer) {
    FlatGround.Spot spot =
        FlatGround.around(last.fix.latitudeDegrees(), last.fix.longitudeDegrees())
            .spot(fix.latitudeDegrees(), fix.longitudeDegrees());
    double driven = odometer - last.odometer;
    return Math.hypot(spot.east(), spot.north()) > SLACK_METRES + (1 + SLACK_SHARE) * driven;
  }
}
