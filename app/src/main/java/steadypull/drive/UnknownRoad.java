package steadypull.drive;

import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;

/** Where nobody knows any road. Stateless. */
final class UnknownRoad implements RoadSight {
  @Override
  public void fixed(PositionFix fix) {}

  @Override
  public void moved(double seconds, double metres) {}

  @Override
  public RoadAhead ahead() {
    return new RoadAhead.Unknown();
  }
}
