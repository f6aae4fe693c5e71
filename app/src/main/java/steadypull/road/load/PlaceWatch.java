package steadypull.road.load;

import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;

/**
 * Watches whether a vehicle whose wheels turn comes along, as it does on a road and not on the
 * rollers of a dynamometer. One thread.
 */
final class PlaceWatch {
  /** Long enough to be told from a receiver's wandering, short for a hairpin. */
  private static final double SPAN_METRES = 300;

  /** A hairpin's ends may lie this near to each other for its length. */
  private static final double STAYED_SHARE = 0.2;

  private Optional<PositionFix> from = Optional.empty();
  private double driven;
  private int stayed;
  private int moved;

  /**
   * Takes a second.
   *
   * @param metres that the wheels rolled in it
   * @param fix where the receiver was at its end, if it told
   */
  void accept(double metres, Optional<PositionFix> fix) {
    driven += metres;
    if (fix.isEmpty() || (from.isPresent() && driven < SPAN_METRES)) {
      return;
    }
    if (from.isPresent()) {
      judge(from.get(), fix.get());
    }
    from = fix;
    driven = 0;
  }

  private void judge(PositionFix before, PositionFix after) {
    double metres =
        FlatGround.around(before.latitudeDegrees(), before.longitudeDegrees())
            .spot(after.latitudeDegrees(), after.longitudeDegrees())
            .distanceTo(new FlatGround.Spot(0, 0));
    if (metres < driven * STAYED_SHARE) {
      stayed++;
    } else {
      moved++;
    }
  }

  /** Whether the vehicle stayed where it was for most of the way its wheels rolled. */
  boolean isOnRollers() {
    return stayed > moved;
  }
}
