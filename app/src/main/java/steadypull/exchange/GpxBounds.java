package steadypull.exchange;

import steadypull.road.RoutePoint;

/**
 * The box around places, degrees. One that crosses the meridian opposite to zero spans the world,
 * because GPX has no other form for it. Nothing at all before the first place. One thread.
 */
final class GpxBounds {
  private double leastLatitude = Double.POSITIVE_INFINITY;
  private double leastLongitude = Double.POSITIVE_INFINITY;
  private double greatestLatitude = Double.NEGATIVE_INFINITY;
  private double greatestLongitude = Double.NEGATIVE_INFINITY;

  void include(RoutePoint place) {
    leastLatitude = Math.min(leastLatitude, place.latitudeDegrees());
    leastLongitude = Math.min(leastLongitude, place.longitudeDegrees());
    greatestLatitude = Math.max(greatestLatitude, place.latitudeDegrees());
    greatestLongitude = Math.max(greatestLongitude, place.longitudeDegrees());
  }

  double leastLatitude() {
    return leastLatitude;
  }

  double leastLongitude() {
    return leastLongitude;
  }

  double greatestLatitude() {
    return greatestLatitude;
  }

  double greatestLongitude() {
    return greatestLongitude;
  }
}
