package steadypull.compare;

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
    loads =
        new BothSides<>(load.of(Side.BEFORE, heat, seconds), load.of(Side.AFTER, heat, seconds));
  }

  /** The course with the heat capacity of one side and the cooling of another, degC. */
  double[] course(Side capacity, Side cooling) {
    double[] course =
        unknowns
            .circuit()
            .shown(
                unknowns.joules(at, capacity),
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
    double settled =
        unknowns.circuit().settled(watts, own, held, LATE, Effects.none(load.startCelsius()));
    return new DrawnSide(
        course,
        told(settled, side),
        unknowns.joules(at, side) * heat.scale(),
        watts * heat.scale(),
        held.heatWatts(LATE, settled) * heat.scale());
  }

  /** What the compared channel shows with the store at a temperature. */
  private double told(double celsius, Side side) {
    return store.isBehindCooler() && load.charge().isPresent()
        ? load.charge().get().of(side).outCelsius(celsius, heat.compressorEfficiency())
        : celsius;
  }
}
