package steadypull.road.climb;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Known climbs in memory, to which those of a drive come one by one. One thread. */
public final class ClimbCollection implements KnownClimbs {
  private final List<KnownClimb> climbs;

  /** Begins with some. */
  public ClimbCollection(Collection<KnownClimb> climbs) {
    this.climbs = new ArrayList<>(climbs);
  }

  /** Takes one more. */
  public void add(KnownClimb climb) {
    climbs.add(climb);
  }

  /** All, in the order in which they came. */
  public List<KnownClimb> all() {
    return List.copyOf(climbs);
  }

  @Override
  public List<KnownClimb> near(GeoBounds bounds) {
    return climbs.stream().filter(climb -> climb.line().bounds().meets(bounds)).toList();
  }
}
