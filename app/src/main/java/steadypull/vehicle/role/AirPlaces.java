package steadypull.vehicle.role;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Map.Entry;
import steadypull.channel.Channels;
import steadypull.vehicle.role.RoleFinding.Confidence;

/**
 * Before or after the charge cooler: air before it is at least as hot as compression without loss
 * makes it; air after it warms with boost but stays far under that; air that has not been
 * compressed does not warm with boost. Shares and slopes are estimated; they leave room for lag.
 */
final class AirPlaces {
  private static final double LEAST_SHARE_BEFORE = 1.05;
  private static final double CLEAR_SHARE_BEFORE = 1.2;
  private static final double CLEAR_LEAD_KELVIN = 25;
  private static final double GREATEST_SHARE_AFTER = 0.9;
  private static final double CLEAR_SHARE_AFTER = 0.7;
  private static final double LEAST_SLOPE_BEFORE = 10; // K per 100 kPa
  private static final double LEAST_SLOPE_AFTER = 3;
  private static final double CLEAR_SLOPE_AFTER = 5;

  /** Sun and the engine bay warm even uncompressed air a little with load. */
  private static final double LEAST_SHARE_OF_STEEPEST = 0.25;

  private static final double ALIKE_KELVIN = 5;
  private static final double TREND_SECONDS = 120;

  private static final Comparator<Entry<String, SensorRecord>> BY_HEAT =
      Comparator.comparingDouble(each -> each.getValue().boost().celsius());

  private AirPlaces() {}

  static List<RoleFinding> findings(Map<String, SensorRecord> air) {
    return List.of(before(air), after(air));
  }

  private static RoleFinding before(Map<String, SensorRecord> air) {
    Map<String, SensorRecord> seen = RoleSurvey.underBoost(air);
    if (seen.isEmpty()) {
      return new RoleFinding.CannotTell(Channels.CHARGE_AIR_TEMP_IN, RoleSurvey.unseen(air));
    }
    seen.values().removeIf(AirPlaces::isIdleHeat);
    return seen.entrySet().stream()
        .max(BY_HEAT)
        .map(hottest -> before(hottest, seen))
        .orElseGet(
            () ->
                new RoleFinding.CannotTell(
                    Channels.CHARGE_AIR_TEMP_IN, new Missing.VaryingBoost()));
  }

  /** Hot, but not because of boost. */
  private static boolean isIdleHeat(SensorRecord sensor) {
    return sensor.trend().isTelling(TREND_SECONDS)
        && sensor.boost().shareOfCompression() >= LEAST_SHARE_BEFORE
        && sensor.trend().kelvinPer100Kilopascals() < LEAST_SLOPE_BEFORE;
  }

  private static RoleFinding before(
      Entry<String, SensorRecord> hottest, Map<String, SensorRecord> seen) {
    BoostMeans boost = hottest.getValue().boost();
    if (boost.shareOfCompression() < LEAST_SHARE_BEFORE) {
      return new RoleFinding.CannotTell(
          Channels.CHARGE_AIR_TEMP_IN,
          new Missing.NoneHotEnough(hottest.getKey(), boost.celsius(), boost.compressedCelsius()));
    }
    boolean isClear =
        boost.shareOfCompression() >= CLEAR_SHARE_BEFORE
            && seen.entrySet().stream()
                .filter(other -> !other.getKey().equals(hottest.getKey()))
                .map(other -> other.getValue().boost().celsius())
                .allMatch(celsius -> celsius <= boost.celsius() - CLEAR_LEAD_KELVIN);
    return new RoleFinding.Proposed(
        Channels.CHARGE_AIR_TEMP_IN,
        hottest.getKey(),
        isClear ? Confidence.CLEAR : Confidence.LIKELY,
        new Reason.HotAsCompressed(
            boost.celsius(),
            boost.manifoldKilopascals(),
            boost.outsideCelsius(),
            boost.compressedCelsius()));
  }

  private static RoleFinding after(Map<String, SensorRecord> air) {
    Map<String, SensorRecord> seen = RoleSurvey.underBoost(air);
    if (seen.isEmpty()) {
      return new RoleFinding.CannotTell(Channels.CHARGE_AIR_TEMP_OUT, RoleSurvey.unseen(air));
    }
    seen.values().removeIf(sensor -> !sensor.trend().isTelling(TREND_SECONDS));
    if (seen.isEmpty()) {
      return new RoleFinding.CannotTell(Channels.CHARGE_AIR_TEMP_OUT, new Missing.VaryingBoost());
    }
    Map<String, SensorRecord> cooled = cooled(seen);
    return cooled.entrySet().stream()
        .min(BY_HEAT)
        .map(coolest -> after(coolest, cooled))
        .orElseGet(
            () ->
                new RoleFinding.CannotTell(
                    Channels.CHARGE_AIR_TEMP_OUT, new Missing.NoneBetween()));
  }

  private static Map<String, SensorRecord> cooled(Map<String, SensorRecord> seen) {
    Map<String, SensorRecord> cooled = new LinkedHashMap<>(seen);
    cooled.values().removeIf(sensor -> sensor.boost().shareOfCompression() > GREATEST_SHARE_AFTER);
    double steepest = cooled.values().stream().mapToDouble(AirPlaces::slope).max().orElse(0);
    double least = Math.max(LEAST_SLOPE_AFTER, LEAST_SHARE_OF_STEEPEST * steepest);
    cooled.values().removeIf(sensor -> slope(sensor) < least);
    return cooled;
  }

  private static double slope(SensorRecord sensor) {
    return sensor.trend().kelvinPer100Kilopascals();
  }

  /** Of those about as cool as the coolest, the first: the standard's charge-air parameter. */
  private static RoleFinding after(
      Entry<String, SensorRecord> coolest, Map<String, SensorRecord> cooled) {
    double alike = coolest.getValue().boost().celsius() + ALIKE_KELVIN;
    Entry<String, SensorRecord> chosen =
        cooled.entrySet().stream()
            .filter(each -> each.getValue().boost().celsius() <= alike)
            .findFirst()
            .orElse(coolest);
    BoostMeans boost = chosen.getValue().boost();
    boolean isClear =
        cooled.size() == 1
            && boost.shareOfCompression() <= CLEAR_SHARE_AFTER
            && slope(chosen.getValue()) >= CLEAR_SLOPE_AFTER;
    return new RoleFinding.Proposed(
        Channels.CHARGE_AIR_TEMP_OUT,
        chosen.getKey(),
        isClear ? Confidence.CLEAR : Confidence.LIKELY,
        new Reason.CooledAfterCompression(
            boost.celsius(),
            boost.manifoldKilopascals(),
            boost.outsideCelsius(),
            boost.compressedCelsius(),
            slope(chosen.getValue())));
  }
}
