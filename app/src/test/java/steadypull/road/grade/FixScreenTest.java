package steadypull.road.grade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;

/** Ten minutes at 20 m/s, and a receiver that says something else for a while. */
class FixScreenTest {
  private static final int SECONDS = 600;
  private static final double METRES_PER_SECOND = 20;
  private static final double WALK = 4;
  private static final FlatGround GROUND = FlatGround.around(-41, -118);

  @Test
  void whatIsRightIsBelieved() {
    assertThat(leftOut(at -> Optional.of(straight(at)))).isEmpty();
    assertThat(leftOut(at -> Optional.of(serpentine(at)))).isEmpty();
    assertThat(leftOut(WALK, at -> Optional.of(turnedBack(at)))).isEmpty();
  }

  @Test
  void aReceiverThatFreezesIsNotBelieved() {
    assertThat(leftOut(at -> Optional.of(straight(at > 200 && at < 260 ? 200 : at))))
        .containsExactlyElementsOf(seconds(201, 260));
  }

  /** As one does that goes on by itself for a while, slower and slower. */
  @Test
  void aReceiverThatCreepsWhileTheWheelsTurnIsNotBelieved() {
    List<Integer> out =
        leftOut(
            at -> {
              FlatGround.Spot here = straight(at > 200 && at < 260 ? 200 : at);
              return Optional.of(
                  new FlatGround.Spot(
                      here.east() + (at > 200 && at < 260 ? 0.2 * (at - 200) : 0), here.north()));
            });

    assertThat(out).containsAll(seconds(211, 260)).doesNotContainAnyElementsOf(seconds(262, 600));
  }

  @Test
  void aJumpOfThreeHundredMetresForAMinuteIsLeftOut() {
    assertThat(leftOut(at -> Optional.of(aside(straight(at), at >= 300 && at < 360 ? 300 : 0))))
        .containsExactlyElementsOf(seconds(300, 360));
  }

  @Test
  void whatWallsReflectForHalfAMinuteIsLeftOut() {
    assertThat(leftOut(at -> Optional.of(aside(straight(at), at >= 300 && at < 325 ? 15 : 0))))
        .containsExactlyElementsOf(seconds(300, 325));
  }

  /** The jump away fell into ten seconds without a fix. */
  @Test
  void aJumpBackSoonAfterSilenceIsOneToo() {
    assertThat(
            leftOut(
                at ->
                    at >= 290 && at < 300
                        ? Optional.empty()
                        : Optional.of(aside(straight(at), at >= 300 && at < 320 ? 25 : 0))))
        .containsExactlyElementsOf(seconds(300, 320));
  }

  private static List<Integer> leftOut(IntFunction<Optional<FlatGround.Spot>> told) {
    return leftOut(METRES_PER_SECOND, told);
  }

  private static List<Integer> leftOut(
      double metresPerSecond, IntFunction<Optional<FlatGround.Spot>> told) {
    List<RoadSecond> seconds = new ArrayList<>();
    List<Optional<PositionFix>> fixes = new ArrayList<>();
    for (int at = 0; at < SECONDS; at++) {
      seconds.add(
          new RoadSecond(
              at, metresPerSecond, Optional.empty(), OptionalDouble.empty(), Optional.empty()));
      double time = at;
      fixes.add(
          told.apply(at)
              .map(
                  spot ->
                      new PositionFix(
                          time,
                          GROUND.latitude(spot.north()),
                          GROUND.longitude(spot.east()),
                          OptionalDouble.empty())));
    }
    List<Optional<PositionFix>> believed = FixScreen.believable(seconds, fixes);
    List<Integer> out = new ArrayList<>();
    for (int at = 0; at < SECONDS; at++) {
      if (!believed.get(at).equals(fixes.get(at))) {
        assertThat(believed.get(at)).isEmpty();
        out.add(at);
      }
    }
    return out;
  }

  private static List<Integer> seconds(int from, int end) {
    return IntStream.range(from, end).boxed().toList();
  }

  private static FlatGround.Spot straight(int at) {
    return straight(METRES_PER_SECOND, at);
  }

  private static FlatGround.Spot straight(double metresPerSecond, int at) {
    Random noise = new Random(at);
    return new FlatGround.Spot(
        metresPerSecond * at + 0.5 * noise.nextGaussian(), 0.5 * noise.nextGaussian());
  }

  /** Legs of 500 m and half circles of 60 m around between them. */
  private static FlatGround.Spot serpentine(int at) {
    double radius = 60;
    double half = 500 + Math.PI * radius;
    double metres = METRES_PER_SECOND * at;
    int leg = (int) (metres / half);
    double on = metres - leg * half;
    double turned = Math.max(0, on - 500) / radius;
    double east = Math.min(500, on) + radius * Math.sin(turned);
    return new FlatGround.Spot(
        leg % 2 == 0 ? east : 500 - east, 2 * radius * leg + radius * (1 - Math.cos(turned)));
  }

  private static FlatGround.Spot turnedBack(int at) {
    return straight(WALK, at < 300 ? at : 600 - at);
  }

  private static FlatGround.Spot aside(FlatGround.Spot spot, double metres) {
    return new FlatGround.Spot(spot.east(), spot.north() + metres);
  }
}
