package steadypull.thermal;

import java.util.List;

/**
 * Where the stores of a vehicle begin at one moment, for any number of looks ahead from it; good
 * until the stores move on.
 *
 * @param draws of each store, in the order in which heat flows, all draws
 * @param middles the same, the most probable one alone
 */
record Beginnings(List<StoreBeginning> draws, List<StoreBeginning> middles) {
  Beginnings {
    draws = List.copyOf(draws);
    middles = List.copyOf(middles);
  }
}
