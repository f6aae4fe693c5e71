package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleFunction;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.road.FlatGround;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.TourDrive;
import steadypull.road.grade.PassTrace;
import steadypull.vehicle.Vehicle;

/**
 * Drives that are no road: what the receiver says is wrong, or the wheels stand, or the way turns
 * more than a road does. Nothing is learned that was not driven, and no wrong road is told as
 * certain. The receiver errs as a usual one; each second a fix.
 */
class NastyDrivesTest {
  private static final FlatGround GROUND = FlatGround.around(-41, -118);
  private static final Vehicle VEHICLE =
      TourDrive.of(Country.larkmoor().alongBrambleLane(), 1).vehicle();

  /**
   * A second of a drive.
   *
   * @param metresPerSecond as the wheels tell
   * @param truth where the vehicle is
   * @param told where the receiver says it is
   */
  private record Second(
      double metresPerSecond, FlatGround.Spot truth, Optional<FlatGround.Spot> told) {}

  @Test
  void aReceiverThatJumpsThreeHundredMetresForAMinuteTeachesNothingThere() {
    for (long seed = 1; seed <= 3; seed++) {
      List<Second> drive =
          told(
              straight(500, 20),
              seed,
              (at, spot) -> at < 200 || at >= 260 ? spot : moved(spot, 300));

      assertIsLearnedWhereItWasDriven(drive, 40);
    }
  }

  @Test
  void aReceiverThatJumpsToAKnownRoadBesideDoesNotMakeItCertain() {
    RoadMemory memory = memory();
    learn(memory, told(straight(500, 20), 1, (_, spot) -> spot));
    learn(memory, told(straight(500, 20), 2, (_, spot) -> moved(spot, 300)));
    List<Second> drive =
        told(straight(500, 20), 3, (at, spot) -> at < 200 || at >= 260 ? spot : moved(spot, 300));

    assertThat(wrongSeconds(memory, drive, 60)).isZero();
  }

  @Test
  void aReceiverThatFreezesIsNoRoadAndNoStand() {
    RoadMemory memory = memory();
    learn(memory, told(straight(500, 20), 1, (_, spot) -> spot));
    FlatGround.Spot[] frozen = new FlatGround.Spot[1];
    List<Second> drive =
        told(
            straight(500, 20),
            2,
            (at, spot) -> {
              frozen[0] = at < 200 || at >= 240 ? spot : frozen[0];
              return frozen[0];
            });

    assertIsLearnedWhereItWasDriven(drive, 40);
    assertThat(wrongSeconds(memory, drive, 100)).isZero();
    assertThat(knownSeconds(memory, drive.subList(0, 230))).isGreaterThan(190);
  }

  @Test
  void tenMinutesWithoutAFixAreNoStraightRoad() {
    List<Second> drive = new ArrayList<>();
    for (Second second : told(serpentine(900, 5, 100, 600), 1, (_, spot) -> spot)) {
      boolean isBlind = drive.size() >= 150 && drive.size() < 750;
      drive.add(
          new Second(
              second.metresPerSecond, second.truth, isBlind ? Optional.empty() : second.told));
    }

    assertIsLearnedWhereItWasDriven(drive, 40);
  }

  @Test
  void aFerryIsNoRoad() {
    List<Second> drive = new ArrayList<>(told(straight(150, 15), 1, (_, spot) -> spot));
    FlatGround.Spot harbour = drive.getLast().truth;
    for (int at = 1; at <= 600; at++) {
      FlatGround.Spot spot = new FlatGround.Spot(harbour.east(), harbour.north() + 8 * at);
      drive.add(new Second(0, spot, Optional.of(spot)));
    }
    FlatGround.Spot other = drive.getLast().truth;
    for (int at = 1; at <= 150; at++) {
      FlatGround.Spot spot = new FlatGround.Spot(other.east() + 15 * at, other.north());
      drive.add(new Second(15, spot, Optional.of(spot)));
    }
    List<Second> driven = drive.stream().filter(second -> second.metresPerSecond > 0).toList();
    RoadMemory memory = memory();
    learn(memory, drive);

    assertThat(farthestNode(memory, driven)).isLessThan(40);
    assertThat(memory.graph().nodesNear(-41, -118, 20_000)).hasSizeGreaterThan(60);
    // on board, the quay that leads on is not the road ahead
    assertThat(wrongSeconds(memory, drive, 150)).isZero();
  }

  /** Sixty metres back on a road that is known in both directions. */
  @Test
  void aStretchInReverseIsNotAnotherRoad() {
    List<FlatGround.Spot> way = new ArrayList<>();
    for (int at = 0; at < 400; at++) {
      way.add(
          new FlatGround.Spot(
              at < 200 ? 15 * at : at < 240 ? 3000 - 1.5 * (at - 200) : 2940 + 15 * (at - 240), 0));
    }
    RoadMemory memory = memory();
    learn(memory, told(straight(500, 15), 1, (_, spot) -> spot));
    List<Second> drive = told(way, 2, (_, spot) -> spot);

    assertIsLearnedWhereItWasDriven(drive, 30);
    assertThat(knownSeconds(memory, drive.subList(0, 200))).isGreaterThan(160);
    assertThat(knownSeconds(memory, drive.subList(0, 400)))
        .isGreaterThan(knownSeconds(memory, drive.subList(0, 200)) + 100);
  }

  /** Legs up a slope 25 m beside each other: each but its own is the other way. */
  @Test
  void legsOfASerpentineStayApart() {
    RoadMemory memory = memory();
    for (long seed = 1; seed <= 3; seed++) {
      learn(memory, told(serpentine(400, 8, 250, 12.5), seed, (_, spot) -> spot));
    }
    List<Second> drive = told(serpentine(400, 8, 250, 12.5), 9, (_, spot) -> spot);

    assertIsLearnedWhereItWasDriven(drive, 25);
    assertThat(knownSeconds(memory, drive)).isGreaterThan(250);
    assertThat(memory.graph().nodesNear(-41, -118, 20_000).size()).isLessThan(420);
  }

  /** A roundabout once around and a half, and rows of a car park up and down. */
  @Test
  void manyTurnsAreLearnedWhereTheyWereDrivenAndNoMoreTheSecondTime() {
    for (List<FlatGround.Spot> way : List.of(roundabout(), serpentine(600, 4, 60, 5))) {
      RoadMemory memory = memory();
      learn(memory, told(way, 1, (_, spot) -> spot));
      int nodes = memory.graph().nodesNear(-41, -118, 20_000).size();
      for (long seed = 2; seed <= 4; seed++) {
        learn(memory, told(way, seed, (_, spot) -> spot));
      }

      assertIsLearnedWhereItWasDriven(told(way, 1, (_, spot) -> spot), 25);
      assertThat(memory.graph().nodesNear(-41, -118, 20_000).size()).isLessThan(2 * nodes);
    }
  }

  /** Before the tunnel the receiver wanders off by 40 m, as it does where half the sky is gone. */
  @Test
  void aReceiverThatDriftsIntoATunnelTellsSo() {
    List<Second> drive = new ArrayList<>();
    for (Second second :
        told(
            straight(500, 20),
            1,
            (at, spot) -> at < 200 || at > 212 ? spot : moved(spot, 3.5 * (at - 200)))) {
      boolean isInside = drive.size() > 212 && drive.size() < 260;
      drive.add(new Second(20, second.truth, isInside ? Optional.empty() : second.told));
    }

    assertIsLearnedWhereItWasDriven(drive, 60);
  }

  private interface Receiver {
    FlatGround.Spot told(int second, FlatGround.Spot spot);
  }

  private static List<Second> told(List<FlatGround.Spot> way, long seed, Receiver receiver) {
    Random random = new Random(seed);
    double east = 2.2 * random.nextGaussian();
    double north = 2.2 * random.nextGaussian();
    List<Second> seconds = new ArrayList<>();
    for (int at = 0; at < way.size(); at++) {
      east = 0.983 * east + 0.4 * random.nextGaussian();
      north = 0.983 * north + 0.4 * random.nextGaussian();
      FlatGround.Spot truth = way.get(at);
      seconds.add(
          new Second(
              at == 0 ? 0 : truth.distanceTo(way.get(at - 1)),
              truth,
              Optional.of(
                  receiver.told(
                      at, new FlatGround.Spot(truth.east() + east, truth.north() + north)))));
    }
    return seconds;
  }

  private static FlatGround.Spot moved(FlatGround.Spot spot, double north) {
    return new FlatGround.Spot(spot.east(), spot.north() + north);
  }

  private static List<FlatGround.Spot> straight(int seconds, double metresPerSecond) {
    return way(seconds, at -> new FlatGround.Spot(metresPerSecond * at, 0));
  }

  private static List<FlatGround.Spot> way(int seconds, IntFunction<FlatGround.Spot> spot) {
    List<FlatGround.Spot> way = new ArrayList<>();
    for (int at = 0; at < seconds; at++) {
      way.add(spot.apply(at));
    }
    return way;
  }

  /** Legs to and fro with half circles between them. */
  private static List<FlatGround.Spot> serpentine(
      int seconds, double metresPerSecond, double legMetres, double radius) {
    double half = legMetres + Math.PI * radius;
    DoubleFunction<FlatGround.Spot> at =
        metres -> {
          int leg = (int) (metres / half);
          double on = metres - leg * half;
          double turned = Math.max(0, on - legMetres) / radius;
          double east = Math.min(legMetres, on) + radius * Math.sin(turned);
          return new FlatGround.Spot(
              leg % 2 == 0 ? east : legMetres - east,
              2 * radius * leg + radius * (1 - Math.cos(turned)));
        };
    return way(seconds, second -> at.apply(metresPerSecond * second));
  }

  /** Straight on for 300 m, one and a half times around 25 m, and straight on. */
  private static List<FlatGround.Spot> roundabout() {
    double radius = 25;
    double round = 3 * Math.PI * radius;
    return way(
        160,
        second -> {
          double metres = 6.0 * second;
          double turned = Math.clamp((metres - 300) / radius, 0, 3 * Math.PI);
          double east =
              metres < 300
                  ? metres
                  : metres < 300 + round
                      ? 300 + radius * Math.sin(turned)
                      : 300 - (metres - 300 - round);
          return new FlatGround.Spot(east, radius * (1 - Math.cos(turned)));
        });
  }

  private static RoadMemory memory() {
    return new RoadMemory(RoadMemory.shelfInMemory());
  }

  private static void learn(RoadMemory memory, List<Second> drive) {
    PassTrace trace = new PassTrace(VEHICLE);
    for (int at = 0; at < drive.size(); at++) {
      long micros = (at + 1) * 1_000_000L;
      trace.accept(
          new Sample(
              Channels.VEHICLE_SPEED, micros - 400_000, drive.get(at).metresPerSecond * 3.6));
      Optional<FlatGround.Spot> told = drive.get(at).told;
      if (told.isPresent()) {
        double latitude = GROUND.latitude(told.get().north());
        double longitude = GROUND.longitude(told.get().east());
        trace.accept(new Sample(Channels.LATITUDE, micros - 50_000, latitude));
        trace.accept(new Sample(Channels.LONGITUDE, micros - 50_000, longitude));
        trace.accept(new Sample(Channels.ALTITUDE, micros - 50_000, 100));
      }
    }
    trace.finish().forEach(pass -> memory.learn(pass, RoadsDriven.DAY));
  }

  private static void assertIsLearnedWhereItWasDriven(List<Second> drive, double metres) {
    RoadMemory memory = memory();
    learn(memory, drive);
    assertThat(memory.graph().nodesNear(-41, -118, 20_000)).isNotEmpty();
    assertThat(farthestNode(memory, drive)).isLessThan(metres);
  }

  /** How far the worst of all nodes lies from the nearest place where somebody drove. */
  private static double farthestNode(RoadMemory memory, List<Second> drive) {
    return memory.graph().nodesNear(-41, -118, 20_000).stream()
        .map(id -> memory.graph().node(id).orElseThrow())
        .map(node -> GROUND.spot(node.latitudeDegrees(), node.longitudeDegrees()))
        .mapToDouble(
            spot ->
                drive.stream()
                    .mapToDouble(second -> second.truth.distanceTo(spot))
                    .min()
                    .orElseThrow())
        .max()
        .orElseThrow();
  }

  private static int knownSeconds(RoadMemory memory, List<Second> drive) {
    int[] known = {0};
    live(memory, drive, (_, matcher) -> known[0] += isCertain(matcher) ? 1 : 0);
    return known[0];
  }

  /** Seconds in which a place farther away than that was told as certain. */
  private static int wrongSeconds(RoadMemory memory, List<Second> drive, double metres) {
    int[] wrong = {0};
    live(
        memory,
        drive,
        (second, matcher) -> {
          boolean isFar =
              matcher
                  .likeliest()
                  .map(
                      place ->
                          GROUND
                              .spot(place.latitudeDegrees(), place.longitudeDegrees())
                              .distanceTo(second.truth))
                  .filter(apart -> apart > metres)
                  .isPresent();
          wrong[0] += isCertain(matcher) && isFar ? 1 : 0;
        });
    return wrong[0];
  }

  private static boolean isCertain(RoadMatcher matcher) {
    return matcher.ahead() instanceof RoadAhead.Known known && known.certain().size() > 0;
  }

  private interface EachSecond {
    void second(Second second, RoadMatcher matcher);
  }

  private static void live(RoadMemory memory, List<Second> drive, EachSecond each) {
    RoadMatcher matcher = new RoadMatcher(memory);
    for (int at = 0; at < drive.size(); at++) {
      double seconds = at;
      Second second = drive.get(at);
      matcher.moved(seconds, second.metresPerSecond);
      second
          .told()
          .map(
              spot ->
                  new PositionFix(
                      seconds,
                      GROUND.latitude(spot.north()),
                      GROUND.longitude(spot.east()),
                      OptionalDouble.empty()))
          .ifPresent(matcher::fixed);
      each.second(second, matcher);
    }
  }
}
