package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.road.FlatGround;

/** A fix each second on flat ground; turns are told with their time and kind. */
class CourseWatchTest {
  private static final FlatGround GROUND = FlatGround.around(-41.5, -118);

  private final CourseWatch watch = new CourseWatch();
  private final List<Turn> turns = new ArrayList<>();
  private double second;
  private double shownSeconds;

  @Test
  void whoComesBackTheWayHeWentHasTurnedOnTheSpot() {
    straight(0, 0, 0, 10);
    straight(100, 3, Math.PI, 10);
    assertThat(turns).hasSize(1);
    assertThat(turns.getFirst().isOnTheSpot()).isTrue();
    assertThat(turns.getFirst().seconds()).isCloseTo(10, within(1.5));
    assertThat(shownSeconds).isLessThan(13);
  }

  /** A bend of 15 m radius to the other direction. */
  @Test
  void aHairpinIsNoTurnOnTheSpot() {
    straight(0, 0, 0, 10);
    for (double angle = 0; angle < Math.PI; angle += 8 / 15.0) {
      fix(100 + 15 * Math.sin(angle), 15 - 15 * Math.cos(angle));
    }
    straight(100, 30, Math.PI, 10);
    assertThat(turns).hasSize(1);
    assertThat(turns.getFirst().isOnTheSpot()).isFalse();
    assertThat(turns.getFirst().seconds()).isBetween(10.0, 17.0);
  }

  @Test
  void aBendOfARoadIsNoTurn() {
    for (double angle = 0; angle < 4; angle += 10 / 60.0) {
      fix(60 * Math.sin(angle), 60 - 60 * Math.cos(angle));
    }
    assertThat(turns).isEmpty();
  }

  /** Steps of 2 m to and fro are the receiver's, not the vehicle's. */
  @Test
  void whoStandsDoesNotTurn() {
    for (int i = 0; i < 300; i++) {
      fix(2 * Math.sin(i * 1.7), 2 * Math.cos(i * 2.3));
    }
    assertThat(turns).isEmpty();
  }

  /** Ten metres a second from a place, in a direction. */
  private void straight(double east, double north, double course, int seconds) {
    for (int i = 1; i <= seconds; i++) {
      fix(east + 10 * i * Math.cos(course), north + 10 * i * Math.sin(course));
    }
  }

  private void fix(double east, double north) {
    second++;
    watch
        .turned(second, GROUND.latitude(north), GROUND.longitude(east))
        .ifPresent(
            turn -> {
              turns.add(turn);
              shownSeconds = second;
            });
  }
}
