package steadypull.compare;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import steadypull.channel.Channels;
import steadypull.compare.RunStart.Known;
import steadypull.vehicle.Driveline;

/**
 * The gear of a run, and whether its converter was locked.
 *
 * @param gear mostly driven; empty if neither told nor known by ratios
 * @param converter locked where engine and wheels kept to one ratio whatever was pulled
 */
record GearSeen(OptionalInt gear, Known converter) {
  /** Below it whole km/h are too coarse. */
  private static final double LOWEST_KILOMETRES_PER_HOUR = 30;

  /** Neighbouring gears lie 15 % or more apart (common practice, no source). */
  private static final double SAME_WITHIN = 0.05;

  /** Half a step to the next gear. */
  private static final double SAME_GEAR = 0.075;

  private static final int AROUND_SECONDS = 120;
  private static final int LEAST_SECONDS = 8;
  private static final double PULLING_SHARE = 0.8;
  private static final double ROLLING_SHARE = 0.5;

  /** A locked converter keeps the ratio; whole km/h at 60 km/h err by 0.8 % (computed). */
  private static final double LOCKED_SLIP = 0.015;

  /** An open one under load slips by 4 % and more (common practice, no source). */
  private static final double OPEN_SLIP = 0.03;

  static GearSeen of(TripSeconds trip, Stretch stretch) {
    double[] ratios = ratios(trip, stretch);
    OptionalDouble middle = Figures.median(ratios);
    OptionalInt gear = told(trip, stretch);
    if (gear.isEmpty() && middle.isPresent()) {
      gear = byRatio(middle.getAsDouble(), trip);
    }
    return new GearSeen(gear, converter(trip, stretch, middle));
  }

  /** Engine turns a metre of road. */
  private static double[] ratios(TripSeconds trip, Stretch stretch) {
    double[] turning = trip.span(Channels.ENGINE_SPEED, stretch.onset(), stretch.end());
    double[] speeds = trip.span(Channels.VEHICLE_SPEED, stretch.onset(), stretch.end());
    double[] ratios = new double[turning.length];
    for (int i = 0; i < ratios.length; i++) {
      boolean isFast = speeds[i] >= LOWEST_KILOMETRES_PER_HOUR;
      ratios[i] = isFast ? turning[i] / 60 / ((speeds[i] + 0.5) / 3.6) : Double.NaN;
    }
    return ratios;
  }

  private static OptionalInt told(TripSeconds trip, Stretch stretch) {
    double[] gears = trip.span(Channels.GEAR, stretch.onset(), stretch.end());
    OptionalDouble middle = Figures.median(gears);
    return middle.isPresent()
        ? OptionalInt.of((int) Math.round(middle.getAsDouble()))
        : OptionalInt.empty();
  }

  private static OptionalInt byRatio(double turnsPerMetre, TripSeconds trip) {
    Driveline driveline = trip.vehicle().driveline();
    OptionalDouble radius = trip.vehicle().rig().tyreRadiusMetres();
    if (driveline.axleRatio().isEmpty() || radius.isEmpty()) {
      return OptionalInt.empty();
    }
    double perTurn = turnsPerMetre * 2 * Math.PI * radius.getAsDouble();
    for (int i = 0; i < driveline.gearRatios().size(); i++) {
      double whole = driveline.gearRatios().get(i) * driveline.axleRatio().getAsDouble();
      if (Math.abs(perTurn / whole - 1) <= SAME_WITHIN) {
        return OptionalInt.of(i + 1);
      }
    }
    return OptionalInt.empty();
  }

  /**
   * An open converter slips more the more it pulls: engine turns a metre under the run's load are
   * held against those of the same gear at little load around it.
   */
  private static Known converter(TripSeconds trip, Stretch stretch, OptionalDouble middle) {
    if (middle.isEmpty()) {
      return Known.UNKNOWN;
    }
    Stretch around =
        new Stretch(
            stretch.onset() - AROUND_SECONDS, stretch.end() + AROUND_SECONDS, stretch.beginning());
    double[] ratios = ratios(trip, around);
    double[] powers = trip.power().span(around.onset(), around.end());
    double usual = trip.power().mean(stretch.onset(), stretch.end()).orElse(0);
    double[] pulling = new double[ratios.length];
    double[] rolling = new double[ratios.length];
    for (int i = 0; i < ratios.length; i++) {
      boolean isSame = Math.abs(ratios[i] / middle.getAsDouble() - 1) < SAME_GEAR;
      pulling[i] = isSame && powers[i] >= PULLING_SHARE * usual ? ratios[i] : Double.NaN;
      rolling[i] = isSame && powers[i] <= ROLLING_SHARE * usual ? ratios[i] : Double.NaN;
    }
    if (Figures.count(pulling) < LEAST_SECONDS || Figures.count(rolling) < LEAST_SECONDS) {
      return Known.UNKNOWN;
    }
    return slip(Figures.median(pulling).orElseThrow() / Figures.median(rolling).orElseThrow() - 1);
  }

  private static Known slip(double slip) {
    if (slip <= LOCKED_SLIP) {
      return Known.YES;
    }
    return slip >= OPEN_SLIP ? Known.NO : Known.UNKNOWN;
  }
}
