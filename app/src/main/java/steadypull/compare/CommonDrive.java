package steadypull.compare;

import java.util.Optional;

/** One set of unknowns under the common load. Stateless; its numbers are not to be written to. */
final class CommonDrive {
  /** A second by which heat is there and lags are over. */
  private static final int LATE = 1000;

  private final Unknowns unknowns;
  private final double[] at;
  private final double[] own;
  private final Store store;
  private final CommonLoad load;
  private final BothSides<LoadCourse> loads;
  private final BothSides<Optional<ChargeAirHeat>> air;
  private final HeatDraw heat;

  /**
   * Of unknowns.
   *
   * @param at their coordinates
   * @param heat what the heat's own errors are in this draw
   * @param seconds to run for, above 120
   */
  CommonDrive(
      Unknowns unknowns, double[] at, Store store, CommonLoad load, HeatDraw heat, int seconds) {
    this.unknowns = unknowns;
    this.at = at;
    this.own = unknowns.own(at);
    this.store = store;
    this.load = load;
    this.heat = heat;
    air = new BothSides<>(load.charge(Side.BEFORE, heat), load.charge(Side.AFTER, heat));
    loads =
        new BothSides<>(load.of(Side.BEFORE, heat, seconds), load.of(Side.AFTER, heat, seconds));
  }

  /** The course with the heat capacity of one side and the cooling of another, degC. */
  double[] course(Side capacity, Side cooling) {
    double uneven =
        capacity == cooling ? 0 : capacity == Side.AFTER ? heat.uneven() : -heat.uneven();
    double[] course =
        unknowns
            .circuit()
            .shown(
                unknowns.joules(at, capacity) * Math.exp(uneven),
                unknowns.watts(at, cooling),
                own,
                loads.of(cooling),
                Effects.none(load.startCelsius()));
    for (int i = 0; i < course.length; i++) {
      course[i] = told(course[i], cooling);
    }
    return course;
  }

  /** All figures of a side with its course. */
  DrawnSide side(Side side, double[] course) {
    double watts = unknowns.watts(at, side);
    LoadCourse held = loads.of(side);
    double settled = settled(side);
    return new DrawnSide(
        course,
        told(settled, side),
        unknowns.joules(at, side) * heat.scale(),
        watts * heat.scale(),
        held.heatWatts(LATE, settled) * heat.scale(),
        air.of(side)
            .map(
                charge ->
                    charge.effectiveness(
                        settled, load.outsideCelsius(), heat.compressorEfficiency()))
            .orElse(Double.NaN));
  }

  /** What the heat's own errors are in this draw. */
  HeatDraw heat() {
    return heat;
  }

  /** Where the compared channel of a side settles, degC. */
  double settles(Side side) {
    return told(settled(side), side);
  }

  private double settled(Side side) {
    return unknowns
        .circuit()
        .settled(
            unknowns.watts(at, side), own, loads.of(side), LATE, Effects.none(load.startCelsius()));
  }

  /** What the compared channel shows with the store at a temperature. */
  private double told(double celsius, Side side) {
    return store.isBehindCooler()
        ? air.of(side)
            .map(charge -> charge.outCelsius(celsius, heat.compressorEfficiency()))
            .orElse(celsius)
        : celsius;
  }
}
