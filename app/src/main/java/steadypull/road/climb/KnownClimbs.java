package steadypull.road.climb;

import java.util.List;

/** The climbs that a library knows. The caller's thread. */
public interface KnownClimbs {
  /** Those whose bounds meet the given ones, in any order; empty if there are none. */
  List<KnownClimb> near(GeoBounds bounds);

  /** No climb. */
  static KnownClimbs none() {
    return _ -> List.of();
  }
}
