package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;
import steadypull.store.TripEvent;

/**
 * What is driven while nobody tells where the vehicle is, by whole km/h: half a unit an hour is 500
 * m. The truth is a speed that swings between 52 and 88 km/h, whose distance is known in closed
 * form.
 */
class OdometerTest {
  private static final int HOUR_SECONDS = 3600;
  private static final double PIECE_METRES = 50;

  /** As far as a telling reaches. */
  private static final int TOLD_PIECES = 400;

  @Test
  void anHourInWholeKilometresPerHourIsNoHalfKilometreShort() {
    assertThat(driven(Math::floor)).isCloseTo(trueMetres(HOUR_SECONDS), within(25.0));
  }

  @Test
  void aSpeedWithDecimalsIsTakenAsItIs() {
    assertThat(driven(speed -> Math.rint(speed * 100) / 100))
        .isCloseTo(trueMetres(HOUR_SECONDS), within(3.0));
  }

  @Test
  void aWholeNumberAmongDecimalsIsNoCutOne() {
    Odometer odometer = new Odometer();
    assertThat(odometer.metres(72)).isCloseTo(72.5 / 3.6, within(1e-9));
    assertThat(odometer.metres(72.25)).isCloseTo(72.25 / 3.6, within(1e-9));
    assertThat(odometer.metres(72)).isCloseTo(20, within(1e-9));
  }

  @Test
  void whoStandsDrivesNothing() {
    assertThat(new Odometer().metres(0)).isZero();
  }

  @Test
  void whoKnowsRoadsIsToldTheMetresThatWereDriven() {
    Metres sight = new Metres();
    drive(new RoadWatch(Optional.of(sight)), List.of(), HOUR_SECONDS);

    assertThat(sight.metres).isCloseTo(trueMetres(HOUR_SECONDS), within(25.0));
  }

  /** Told once, then nothing for a quarter of an hour: without the half unit it were 125 m late. */
  @Test
  void aKeptRoadLiesWhereItIsAfterAQuarterOfAnHourWithoutAFix() {
    int seconds = 900;
    RoadWatch watch = new RoadWatch(Optional.empty());
    double begin = trueMetres(1);
    drive(watch, List.of(RoadNews.event(999_999, ahead(begin))), seconds);

    assertThat(metresOff(watch.ahead(), begin, trueMetres(seconds))).isBetween(-40.0, 40.0);
  }

  /** Such a trip tells anew what its own metres, half a unit short, made untrue. */
  @Test
  void aTripKeptByAnOdometerWithoutTheHalfUnitKnowsTheSameRoadAgain() {
    RoadTold older = new RoadTold();
    List<TripEvent> kept = new ArrayList<>();
    for (int second = 1; second <= HOUR_SECONDS; second++) {
      double cut = Math.floor(kilometresPerHour(second)) / 3.6;
      older.hear(second * 1_000_000L, cut, ahead(trueMetres(second))).ifPresent(kept::add);
      older.moved(cut);
    }
    RoadWatch again = new RoadWatch(Optional.empty());
    int next = 0;
    double toldAt = 0;
    for (int second = 1; second <= HOUR_SECONDS; second++) {
      while (next < kept.size() && kept.get(next).timeMicros() < second * 1_000_000L) {
        again.accept(kept.get(next++));
        toldAt = trueMetres(second);
      }
      pass(again, second);
      assertThat(metresOff(again.ahead(), toldAt, trueMetres(second)))
          .as("second %d", second)
          .isBetween(-60.0, 60.0);
    }
    assertThat(kept.size()).as("tellings").isBetween(2, 100);
  }

  private static double driven(DoubleUnaryOperator told) {
    Odometer odometer = new Odometer();
    double metres = 0;
    for (int second = 1; second <= HOUR_SECONDS; second++) {
      metres += odometer.metres(told.applyAsDouble(kilometresPerHour(second)));
    }
    return metres;
  }

  private static void drive(RoadWatch watch, List<TripEvent> kept, int seconds) {
    kept.forEach(watch::accept);
    for (int second = 1; second <= seconds; second++) {
      pass(watch, second);
    }
  }

  private static void pass(RoadWatch watch, int second) {
    long micros = second * 1_000_000L;
    watch.accept(
        new Sample(
            Channels.VEHICLE_SPEED, micros - 300_000, Math.floor(kilometresPerHour(second))));
    watch.second(micros, Optional.empty());
  }

  /** How far the end of what is known lies beyond where it was told to lie. */
  private static double metresOff(RoadAhead ahead, double toldAt, double here) {
    double known = ((RoadAhead.Known) ahead).certain().lengthMetres();
    return toldAt + TOLD_PIECES * PIECE_METRES - here - known;
  }

  private static RoadAhead ahead(double metres) {
    double[] grades = new double[TOLD_PIECES];
    for (int piece = 0; piece < TOLD_PIECES; piece++) {
      grades[piece] = 0.05 * Math.sin((metres + piece * PIECE_METRES) / 900);
    }
    return new RoadAhead.Known(
        new GradeProfile(PIECE_METRES, grades, new double[TOLD_PIECES]), List.of());
  }

  private static double kilometresPerHour(double second) {
    return 70 + 18 * Math.sin(second / 37);
  }

  /** The integral of the speed since the beginning. */
  private static double trueMetres(double seconds) {
    return (70 * seconds + 18 * 37 * (1 - Math.cos(seconds / 37))) / 3.6;
  }

  private static final class Metres implements RoadSight {
    private double metres;

    @Override
    public void fixed(PositionFix fix) {}

    @Override
    public void moved(double seconds, double driven) {
      metres += driven;
    }

    @Override
    public RoadAhead ahead() {
      return new RoadAhead.Unknown();
    }
  }
}
