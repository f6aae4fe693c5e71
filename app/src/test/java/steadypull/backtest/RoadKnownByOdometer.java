package steadypull.backtest;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleSupplier;
import steadypull.demo.road.Road;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;

/**
 * Looks ahead along the world's own road with the errors that a memory of a few passes has, or an
 * imported route of some metres' error: grades err by 0.2 to 0.6 % every 200 m by themselves, and
 * the place by some fifty metres all along.
 */
final class RoadKnownByOdometer implements RoadSight {
  private static final double PIECE_METRES = 50;
  private static final int PIECES = 400;
  private static final int PIECES_THAT_ERR_ALIKE = 4;
  private static final double LEAST_ERROR = 0.002;
  private static final double MOST_ERROR = 0.006;
  private static final double PLACE_METRES = 50;

  private final double[] grades;
  private final double error;
  private final double besideMetres;
  private final DoubleSupplier metres;

  RoadKnownByOdometer(Road road, long seed, DoubleSupplier metres) {
    this.metres = metres;
    Random random = new Random(seed);
    error = LEAST_ERROR + (MOST_ERROR - LEAST_ERROR) * random.nextDouble();
    besideMetres = PLACE_METRES * random.nextGaussian();
    grades = new double[(int) (road.length() / PIECE_METRES) + 1];
    double beside = 0;
    for (int piece = 0; piece < grades.length; piece++) {
      if (piece % PIECES_THAT_ERR_ALIKE == 0) {
        beside = error * random.nextGaussian();
      }
      grades[piece] = road.at((piece + 0.5) * PIECE_METRES).gradePercent() / 100 + beside;
    }
  }

  @Override
  public void fixed(PositionFix fix) {}

  @Override
  public void moved(double seconds, double driven) {}

  @Override
  public RoadAhead ahead() {
    int from = (int) (Math.max(0, metres.getAsDouble() + besideMetres) / PIECE_METRES);
    int size = Math.clamp(grades.length - from, 0, PIECES);
    double[] ahead = new double[size];
    double[] errors = new double[size];
    for (int piece = 0; piece < size; piece++) {
      ahead[piece] = grades[from + piece];
      errors[piece] = error;
    }
    return new RoadAhead.Known(new GradeProfile(PIECE_METRES, ahead, errors), List.of());
  }
}
