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
 * Looks ahead along the world's own road with the error that a memory of a few passes has; every
 * 200 m err by themselves.
 */
final class RoadKnownByOdometer implements RoadSight {
  private static final double PIECE_METRES = 50;
  private static final int PIECES = 400;
  private static final int PIECES_THAT_ERR_ALIKE = 4;
  private static final double ERROR = 0.002;

  private final double[] grades;
  private final DoubleSupplier metres;

  RoadKnownByOdometer(Road road, long seed, DoubleSupplier metres) {
    this.metres = metres;
    Random random = new Random(seed);
    grades = new double[(int) (road.length() / PIECE_METRES) + 1];
    double beside = 0;
    for (int piece = 0; piece < grades.length; piece++) {
      if (piece % PIECES_THAT_ERR_ALIKE == 0) {
        beside = ERROR * random.nextGaussian();
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
    int from = (int) (metres.getAsDouble() / PIECE_METRES);
    int size = Math.clamp(grades.length - from, 0, PIECES);
    double[] ahead = new double[size];
    double[] errors = new double[size];
    for (int piece = 0; piece < size; piece++) {
      ahead[piece] = grades[from + piece];
      errors[piece] = ERROR;
    }
    return new RoadAhead.Known(new GradeProfile(PIECE_METRES, ahead, errors), List.of());
  }
}
