package steadypull.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RouteTest {
  // The test cases that GeographicLib publishes with its libraries (geodtest, twenty geodesics of
  // the WGS 84 ellipsoid: lat1, lon1, lat2, lon2 in degrees, s12 in metres; coordinates exact,
  // distance to 10 nm), here ten of them: Karney, "Algorithms for geodesics", Journal of Geodesy
  // 87, 2013, 43-55, and his "Test set for geodesics", 2010. Our tolerance is a micrometre on
  // 17 000 km.
  @ParameterizedTest
  @CsvSource({
    "35.60777, -139.44815, -11.17491, -69.95921, 8935244.5604818305",
    "55.52454, 106.05087, 77.03196, 197.18234, 4105086.1713924406",
    "-21.97856, 142.59065, 41.84138, 98.56635, 8394328.894657671",
    "-17.42761, 173.34268, -15.84784, 5.93557, 16076603.1631180673",
    "6.96833, 52.74123, -7.39675, 206.17291, 17102477.2496958388",
    "-50.56724, -16.30485, -33.56571, -94.97412, 6455670.5118668696",
    "-68.82867, -74.28391, -50.63005, -8.36685, 3956936.926063544",
    "-19.79938, -174.47484, -11.99349, -154.35109, 2319004.8601169389",
    "-87.85331, 85.66836, 66.48646, 16.09921, 17286615.3147144645",
    "-25.72959, -144.90758, -57.70581, -269.17879, 9413446.7452453107",
  })
  void distancesAreThoseOfThePublishedGeodesics(
      double fromLatitude,
      double fromLongitude,
      double toLatitude,
      double toLongitude,
      double metres) {
    assertThat(Geodesics.metres(fromLatitude, fromLongitude, toLatitude, toLongitude))
        .isCloseTo(metres, within(1e-6));
  }

  // A quarter of a meridian of WGS 84 is 10 001 965.729 m (the meridian quadrant of NIMA
  // TR8350.2, third edition, 2000; from memory). Sums of pieces must give the whole.
  @Test
  void distanceAlongAddsUpPointByPoint() {
    RouteSegment meridian =
        RouteSegment.of(
            new RoutePoint(0, 11),
            new RoutePoint(30.5, 11),
            new RoutePoint(30.5, 11),
            new RoutePoint(90, 11));

    assertThat(meridian.distanceMetres(0)).isZero();
    assertThat(meridian.distanceMetres(2)).isEqualTo(meridian.distanceMetres(1));
    assertThat(meridian.lengthMetres()).isCloseTo(10_001_965.729, within(1e-3));
  }

  @Test
  void theWayAcrossTheDateLineIsTheShortOne() {
    RouteSegment across = RouteSegment.of(new RoutePoint(0, 179.5), new RoutePoint(0, -179.5));

    // One degree of the equator: 6378137 m * pi / 180.
    assertThat(across.lengthMetres()).isCloseTo(6_378_137 * Math.PI / 180, within(1e-6));
  }

  @Test
  void breaksBetweenSegmentsDoNotCountAsDriven() {
    RouteSegment first = RouteSegment.of(new RoutePoint(0, 0), new RoutePoint(0, 1));
    RouteSegment second = RouteSegment.of(new RoutePoint(0, 2), new RoutePoint(0, 3));

    Route route = new Route("two", List.of(first, second));

    assertThat(route.lengthMetres()).isEqualTo(first.lengthMetres() + second.lengthMetres());
    assertThat(route.size()).isEqualTo(4);
  }

  @Test
  void whatIsNotKnownOfAPointStaysUnknown() {
    RoutePoint bare = new RoutePoint(1, 2);
    RoutePoint full =
        new RoutePoint(
            1, 2, OptionalDouble.of(0), Optional.of(Instant.parse("1969-12-31T23:59:59.999999Z")));
    RouteSegment segment = RouteSegment.of(bare, full, bare);

    assertThat(segment.points()).containsExactly(bare, full, bare);
    assertThat(segment).isEqualTo(RouteSegment.of(bare, full, bare));
    assertThat(segment).isNotEqualTo(RouteSegment.of(bare, bare, full));
  }

  @ParameterizedTest
  @CsvSource({"90.001, 0", "-91, 0", "NaN, 0", "0, 180", "0, -180.1", "0, NaN", "Infinity, 0"})
  void aPlaceOffTheEarthIsNoPoint(double latitude, double longitude) {
    assertThatThrownBy(() -> new RoutePoint(latitude, longitude))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("found");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1000.1, 10_000.1, Double.NaN})
  void aRoadUnderTheSeaOrAboveAllRoadsIsNone(double metres) {
    assertThatThrownBy(() -> new RoutePoint(0, 0, OptionalDouble.of(metres), Optional.empty()))
        .hasMessageContaining("elevation of -1000 to 10000 m");
  }

  @Test
  void oneSinglePointIsNoRoute() {
    assertThatThrownBy(() -> new Route("", List.of(RouteSegment.of(new RoutePoint(0, 0)))))
        .hasMessageContaining("two points or more, found 1");
    assertThatThrownBy(RouteSegment::of).hasMessageContaining("one point or more");
  }
}
