package steadypull.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Flat ground against the ellipsoid of WGS 84 as GeographicLib computes it (Karney, "Algorithms for
 * geodesics", Journal of Geodesy 87, 2013, 43-55).
 */
class FlatGroundTest {

  /**
   * Where a geodesic of that bearing and length from the origin ends, the flat ground agrees but
   * for the narrowing of the meridians: d2 tan(latitude) / 2R.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 37, 1000",
    "46.5, 8.1, 210, 1000",
    "-33.9, 179.999, 88, 1000",
    "-33.9, -179.999, 272, 1000",
    "68.2, 15.3, 130, 1000",
    "46.5, 8.1, 45, 10000",
    "-52.0, -70.5, 300, 10000"
  })
  void awayFromTheOriginOnlyTheMeridiansNarrow(
      double latitude, double longitude, double bearing, double metres) {
    GeodesicData end = Geodesic.WGS84.Direct(latitude, longitude, bearing, metres);
    FlatGround.Spot spot = FlatGround.around(latitude, longitude).spot(end.lat2, end.lon2);

    double east = metres * Math.sin(Math.toRadians(bearing));
    double north = metres * Math.cos(Math.toRadians(bearing));
    double narrowing =
        metres * metres * Math.tan(Math.toRadians(Math.abs(latitude))) / 2 / 6_371_000;
    assertThat(Math.hypot(spot.east() - east, spot.north() - north))
        .isLessThan(1.3 * narrowing + 0.02);
  }

  /** A hundred metres north or east are a hundred metres, but for some micrometres. */
  @ParameterizedTest
  @CsvSource({"0", "46.5", "-33.9", "68.2", "89"})
  void scalesAreThoseOfTheEllipsoid(double latitude) {
    double degrees = 0.001;
    FlatGround.Spot spot = FlatGround.around(latitude, 8).spot(latitude + degrees, 8 + degrees);
    double north = Geodesics.metres(latitude, 8, latitude + degrees, 8);
    double east = Geodesics.metres(latitude, 8, latitude, 8 + degrees);

    // north from the middle of the way the meridian's radius is another by some 1e-7
    assertThat(spot.north()).isCloseTo(north, within(north * 2e-7));
    assertThat(spot.east()).isCloseTo(east, within(east * 1e-9));
  }

  @ParameterizedTest
  @CsvSource({"46.5, 8.1", "-33.9, 179.95", "0, -180", "68.2, 15.3"})
  void spotsLeadBackToTheirPlaces(double latitude, double longitude) {
    FlatGround ground = FlatGround.around(latitude, longitude);
    FlatGround.Spot spot = ground.spot(latitude + 0.07, longitude - 0.09);

    assertThat(ground.latitude(spot.north())).isCloseTo(latitude + 0.07, within(1e-12));
    assertThat(Math.IEEEremainder(ground.longitude(spot.east()) - (longitude - 0.09), 360))
        .isCloseTo(0, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"46.5, 0.01", "46.5, 0.1"})
  void distancesBetweenSpotsAreThoseOfTheGeodesic(double latitude, double degrees) {
    FlatGround ground = FlatGround.around(latitude, 8);
    double flat = ground.spot(latitude, 8).distanceTo(ground.spot(latitude + degrees, 8 + degrees));
    double curved = Geodesics.metres(latitude, 8, latitude + degrees, 8 + degrees);

    assertThat(flat).isCloseTo(curved, within(curved / 1000));
  }
}
