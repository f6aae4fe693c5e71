package steadypull.compare;

import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.FlatGround;

/**
 * Tells a dynamometer from a road: wheels turn, but the place stays, or a climb by torque does not
 * thin the air.
 */
final class RunGround {
  /** Enough to be told from a receiver's wandering. */
  private static final double LEAST_METRES = 300;

  /** A receiver's wandering and reflections at a workshop's door (our choice). */
  private static final double STAYED_METRES = 50;

  /** 1.1 kg/m3 of air at 1000 m: 10.9 Pa a metre (ISO 2533, table of densities). */
  private static final double KILOPASCALS_PER_METRE = 0.0109;

  /** Two readings in whole kPa, half a kPa each, and as much for the weather (our choice). */
  private static final double DOUBT_KILOPASCALS = 1.5;

  /** Two seconds and the lag of boost. */
  private static final int SUDDEN_SECONDS = 3;

  private static final int ABOUT_SECONDS = 20;
  private static final double REST_SHARE = 0.4;
  private static final double FULL_SHARE = 0.85;

  /** Whole km/h flip by one. */
  private static final double SAME_KILOMETRES_PER_HOUR = 1;

  private RunGround() {}

  static Run.Ground of(TripSeconds trip, Stretch stretch) {
    double metres =
        Figures.mean(trip.span(Channels.VEHICLE_SPEED, stretch.onset(), stretch.end())).orElse(0)
            / 3.6
            * stretch.seconds();
    if (metres < LEAST_METRES) {
      return Run.Ground.UNKNOWN;
    }
    OptionalDouble came = cameMetres(trip, stretch);
    if (came.isPresent()) {
      return came.getAsDouble() < STAYED_METRES ? Run.Ground.ROLLERS : Run.Ground.ROAD;
    }
    Run.Ground ground = byPressure(trip, stretch);
    return ground == Run.Ground.UNKNOWN && isSuddenWithoutSpeed(trip, stretch)
        ? Run.Ground.ROLLERS
        : ground;
  }

  /**
   * Whether the load came within seconds and the wheels turned no faster or slower for it: a road
   * would have to become steep within some 60 m.
   */
  private static boolean isSuddenWithoutSpeed(TripSeconds trip, Stretch stretch) {
    int onset = stretch.onset();
    double level = trip.power().mean(onset + SUDDEN_SECONDS, onset + ABOUT_SECONDS).orElse(0);
    double[] speeds =
        trip.span(Channels.VEHICLE_SPEED, onset - ABOUT_SECONDS, onset + ABOUT_SECONDS);
    double span = Figures.most(speeds).orElse(Double.MAX_VALUE) - Figures.least(speeds).orElse(0);
    return trip.power().at(onset - SUDDEN_SECONDS) <= REST_SHARE * level
        && trip.power().at(onset + SUDDEN_SECONDS) >= FULL_SHARE * level
        && Figures.count(speeds) > ABOUT_SECONDS
        && span <= SAME_KILOMETRES_PER_HOUR;
  }

  /** The greatest distance from the first place; empty if places were hardly told. */
  private static OptionalDouble cameMetres(TripSeconds trip, Stretch stretch) {
    double[] north = trip.span(Channels.LATITUDE, stretch.onset(), stretch.end());
    double[] east = trip.span(Channels.LONGITUDE, stretch.onset(), stretch.end());
    FlatGround ground = null;
    double most = 0;
    int told = 0;
    for (int i = 0; i < north.length; i++) {
      if (!Double.isNaN(north[i]) && !Double.isNaN(east[i])) {
        ground = ground == null ? FlatGround.around(north[i], east[i]) : ground;
        most = Math.max(most, ground.spot(north[i], east[i]).distanceTo(new FlatGround.Spot(0, 0)));
        told++;
      }
    }
    return 2 * told < north.length ? OptionalDouble.empty() : OptionalDouble.of(most);
  }

  private static Run.Ground byPressure(TripSeconds trip, Stretch stretch) {
    double[] grades = trip.span(Channels.ROAD_GRADE, stretch.onset(), stretch.end());
    double[] speeds = trip.span(Channels.VEHICLE_SPEED, stretch.onset(), stretch.end());
    double[] pressures = trip.span(Channels.BAROMETRIC_PRESSURE, stretch.onset(), stretch.end());
    if (2 * Figures.count(grades) < grades.length || Figures.count(pressures) < 2) {
      return Run.Ground.UNKNOWN;
    }
    double rise = 0;
    for (int i = 0; i < grades.length; i++) {
      double metres = grades[i] / 100 * speeds[i] / 3.6;
      rise += Double.isNaN(metres) ? 0 : metres;
    }
    double fall = Figures.most(pressures).orElse(0) - Figures.least(pressures).orElse(0);
    if (rise * KILOPASCALS_PER_METRE - fall >= DOUBT_KILOPASCALS) {
      return Run.Ground.ROLLERS;
    }
    return fall >= 2 * DOUBT_KILOPASCALS - 1 ? Run.Ground.ROAD : Run.Ground.UNKNOWN;
  }
}
