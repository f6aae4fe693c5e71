package steadypull.drive;

import java.time.Instant;
import java.util.List;
import steadypull.review.HeatTrend;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Vehicle;

/** What a vehicle's earlier trips say of its coolers when a trip begins. Stateless. */
final class CoolerFall {
  private CoolerFall() {}

  /**
   * By how much less heat a cooler moves than when it was fitted.
   *
   * @param start trips that began before it count
   * @return percent, of the cooler that lost most among those whose loss is sure; 0 if none is
   * @throws LibraryException if the lessons cannot be read
   */
  static double percent(TripLibrary library, Vehicle vehicle, Instant start)
      throws LibraryException {
    return percent(library.heat().lessons(vehicle.name()), vehicle, start);
  }

  /** The same from what trips have told. */
  static double percent(List<LessonOfTrip> lessons, Vehicle vehicle, Instant start) {
    List<LessonOfTrip> present =
        lessons.stream()
            .filter(each -> each.start().isBefore(start))
            .filter(each -> !each.start().isBefore(vehicle.configuration().since()))
            .toList();
    return HeatTrend.watched(vehicle.layout()).stream()
        .flatMap(id -> HeatTrend.of(id, present).stream())
        .filter(HeatTrend::isFall)
        .mapToDouble(trend -> -100 * trend.p50())
        .max()
        .orElse(0);
  }
}
