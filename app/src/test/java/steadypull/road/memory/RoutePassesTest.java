package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.RouteSegmentBuilder;

/** A route's stretches; its road lies on the equator, climbs 6 % all along and leads east. */
class RoutePassesTest {
  /** Metres in one degree of the equator of WGS 84: 6378137 pi / 180. */
  private static final double METRES_PER_DEGREE = 111_319.49;

  private static final double GRADE = 0.06;

  // A track breaks off where its receiver hears nothing. A climb known up to a tunnel only was
  // foretold to die away in it.
  @Test
  void aTunnelIsNoEndOfTheRoad() {
    List<RoadPass> passes = RoutePasses.of(route(stretch(0, 3000), stretch(3550, 6000)));
    assertThat(passes).hasSize(1);
    assertThat(passes.getFirst().lengthMetres()).isCloseTo(6000, within(5.0));
    assertThat(passes.getFirst().points())
        .filteredOn(point -> point.metres() > 3100 && point.metres() < 3450)
        .isNotEmpty()
        .extracting(PassPoint::grade)
        .allSatisfy(grade -> assertThat(grade).isCloseTo(GRADE, within(0.001)));
  }

  @Test
  void aWayThatGoesOnElsewhereIsAnotherOne() {
    List<RoadPass> passes = RoutePasses.of(route(stretch(0, 3000), stretch(4200, 6000)));
    assertThat(passes)
        .extracting(pass -> Math.round(pass.lengthMetres() / 10))
        .containsExactly(300L, 180L);
  }

  private static Route route(RouteSegment... segments) {
    return new Route("way", List.of(segments));
  }

  private static RouteSegment stretch(int fromMetres, int toMetres) {
    RouteSegmentBuilder points = new RouteSegmentBuilder();
    for (int metres = fromMetres; metres <= toMetres; metres += 50) {
      points.add(
          new RoutePoint(
              0,
              metres / METRES_PER_DEGREE,
              OptionalDouble.of(100 + GRADE * metres),
              Optional.empty()));
    }
    return points.build();
  }
}
