package steadypull.cli;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import steadypull.review.HeatTrend;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Vehicle;

/** What its owner should look at: coolers that move less heat than they did. */
final class HeatTrendText {
  private HeatTrendText() {}

  /** A line for each that has fallen since it is fitted as it is; empty if nothing has. */
  static String of(Vehicle vehicle, List<LessonOfTrip> lessons) {
    return trends(vehicle, lessons).stream()
        .filter(HeatTrend::isFall)
        .map(HeatTrendText::line)
        .collect(Collectors.joining());
  }

  /** What is watched for clogging and can be told, falling or not. */
  static List<HeatTrend> trends(Vehicle vehicle, List<LessonOfTrip> lessons) {
    List<LessonOfTrip> present =
        lessons.stream()
            .filter(lesson -> !lesson.start().isBefore(vehicle.configuration().since()))
            .toList();
    return HeatTrend.watched(vehicle.layout()).stream()
        .flatMap(id -> HeatTrend.of(id, present).stream())
        .toList();
  }

  private static String line(HeatTrend trend) {
    return String.format(
        Locale.ROOT,
        "%s moves %.0f %% less heat than in %s (%.0f to %.0f %%), %d trips: clogging?%n",
        what(trend.quantityId()),
        -100 * trend.p50(),
        month(trend.first().atOffset(ZoneOffset.UTC)),
        -100 * trend.p95(),
        -100 * trend.p05(),
        trend.trips());
  }

  private static String what(String quantityId) {
    return switch (quantityId) {
      case "charge_air.transfer_units" -> "charge cooler";
      case "charge_coolant.conductance_W_per_K" -> "charge cooler's radiator";
      case "engine_coolant.conductance_W_per_K" -> "engine's radiator";
      default -> quantityId;
    };
  }

  private static String month(OffsetDateTime first) {
    return first.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + first.getYear();
  }
}
