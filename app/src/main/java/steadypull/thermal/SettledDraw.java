package steadypull.thermal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * The stores of a vehicle with one set of parameters, and where they settle under a load that goes
 * on for ever. Immutable.
 */
final class SettledDraw {
  /** Three of the state and as many parameters as a store may have. */
  private static final int DIMENSIONS_PER_STORE = 12;

  private static final int DRAWS = 32;
  private static final double[] STEPS = HorizonGrid.untilSettled();

  /** One store, its physics and its parameters. */
  private static final class Drawn {
    private final int index;
    private final HeatBalance balance;
    private final double[] parameters;

    Drawn(ChannelEstimate estimate, double[] state) {
      this.index = estimate.store().index();
      this.balance = estimate.balance();
      this.parameters = estimate.physical(state);
    }

    void advance(double[] celsius, Load load, double step) {
      celsius[index] = balance.step(celsius[index], parameters, load, celsius, 0, step);
    }
  }

  private final List<Drawn> stores;
  private final double[] begin;

  private SettledDraw(List<Drawn> stores, double[] begin) {
    this.stores = stores;
    this.begin = begin;
  }

  /** The most probable parameters. */
  static SettledDraw middle(Collection<ChannelEstimate> estimates) {
    double[] begin = new double[Store.COUNT];
    List<Drawn> stores = new ArrayList<>();
    for (ChannelEstimate estimate : estimates) {
      begin[estimate.store().index()] = estimate.celsius();
      stores.add(new Drawn(estimate, estimate.state()));
    }
    return new SettledDraw(stores, begin);
  }

  /** Parameters as they may be, each draw as likely as the next. */
  static List<SettledDraw> of(Collection<ChannelEstimate> estimates) {
    DrawSet draws = new DrawSet(DRAWS, Store.COUNT * DIMENSIONS_PER_STORE);
    List<SettledDraw> all = new ArrayList<>();
    for (int draw = 0; draw < DRAWS; draw++) {
      double[] begin = new double[Store.COUNT];
      List<Drawn> stores = new ArrayList<>();
      for (ChannelEstimate estimate : estimates) {
        begin[estimate.store().index()] = estimate.celsius();
        stores.add(new Drawn(estimate, drawn(estimate, draws, draw)));
      }
      all.add(new SettledDraw(stores, begin));
    }
    return all;
  }

  private static double[] drawn(ChannelEstimate estimate, DrawSet draws, int draw) {
    double[] state = estimate.state();
    double[][] spread = estimate.spread();
    int first = estimate.store().index() * DIMENSIONS_PER_STORE;
    for (int row = 0; row < spread.length; row++) {
      for (int column = 0; column < spread[row].length; column++) {
        state[row] += spread[row][column] * draws.at(draw, first + column);
      }
    }
    return state;
  }

  /** Where every store settles, degC by {@link Store#index()}; their sensors show it by then. */
  double[] under(Load load) {
    double[] celsius = begin.clone();
    for (double step : STEPS) {
      for (Drawn store : stores) {
        store.advance(celsius, load, step);
      }
    }
    return celsius;
  }
}
