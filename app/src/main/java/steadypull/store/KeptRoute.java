package steadypull.store;

import java.util.Objects;

/**
 * What a list of routes shows of one route.
 *
 * @param id short, fit for a file name, the same in every library that holds the route
 * @param name as people call it; may be empty
 */
public record KeptRoute(String id, String name) {
  public KeptRoute {
    Objects.requireNonNull(id);
    Objects.requireNonNull(name);
  }
}
