package steadypull.thermal;

import java.util.List;
import java.util.Optional;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LearntQuantity;

/**
 * What a drive begins with for the parameters of one store: the layout's belief, or what the
 * vehicle's earlier trips have taught. Where the drive leads a parameter clearly away from what was
 * taught (a cooler that has clogged overnight), all of the store get the layout's spread back,
 * once: the others were led astray with it. Pipeline thread only.
 */
final class LearntBeliefs {
  /**
   * So many spreads from where it began a parameter is elsewhere: one drive in fifty gets there by
   * chance (normal distribution).
   */
  private static final double ELSEWHERE_SPREADS = 2.3;

  private static final double[] NOTHING = {};

  private final List<HeatQuantity> quantities;
  private final double[] coordinates;
  private final double[] spreads;

  LearntBeliefs(Store store, HeatBalance balance, LearntHeat learnt) {
    this.quantities = StoreQuantities.of(store, balance);
    List<Parameter> parameters = balance.parameters();
    this.coordinates = new double[quantities.size()];
    this.spreads = new double[quantities.size()];
    for (int i = 0; i < spreads.length; i++) {
      HeatQuantity quantity = quantities.get(i);
      Optional<LearntQuantity> known =
          learnt.of(quantity.id()).filter(each -> each.quantity().equals(quantity));
      coordinates[i] =
          parameters.get(i).bounded(known.map(LearntQuantity::mean).orElse(quantity.usual()));
      spreads[i] = known.map(LearntQuantity::spread).orElse(quantity.spread());
    }
  }

  /** The coordinate of a parameter with which the drive begins. */
  double coordinate(int parameter) {
    return coordinates[parameter];
  }

  /** Its standard deviation then. */
  double spread(int parameter) {
    return spreads[parameter];
  }

  /**
   * Looks where the drive has led the parameters.
   *
   * @param state of the store: degC, K/s, then one coordinate per parameter
   * @return variance to be added to each parameter; empty if to none
   */
  double[] doubted(double[] state) {
    return isElsewhere(state) ? opened() : NOTHING;
  }

  private boolean isElsewhere(double[] state) {
    for (int i = 0; i < spreads.length; i++) {
      double moved = state[StoreProcess.FIRST_COORDINATE + i] - coordinates[i];
      if (spreads[i] < quantities.get(i).spread()
          && Math.abs(moved) > ELSEWHERE_SPREADS * spreads[i]) {
        return true;
      }
    }
    return false;
  }

  private double[] opened() {
    double[] added = new double[spreads.length];
    for (int i = 0; i < added.length; i++) {
      double usual = quantities.get(i).spread();
      added[i] = usual * usual - spreads[i] * spreads[i];
      spreads[i] = usual;
    }
    return added;
  }
}
