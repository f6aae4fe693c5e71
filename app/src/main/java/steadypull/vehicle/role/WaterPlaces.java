package steadypull.vehicle.role;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Map.Entry;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.role.RoleFinding.Confidence;

/**
 * Engine or charge cooler: a thermostat holds the engine's water, while a charge cooler's circuit
 * takes heat with boost and goes its own way, most of the time cooler. A sensor at the outlet of
 * the engine's radiator looks much the same, so that no finding here is clear.
 */
final class WaterPlaces {
  /** Sensors of one water differ by less; estimated. */
  private static final double APART_KELVIN = 5;

  /** Without the engine's own parameter the two waters must lie further apart; estimated. */
  private static final double FAR_APART_KELVIN = 8;

  /** What takes heat out of charge air warms with boost: K per 100 kPa, estimated. */
  private static final double LEAST_SLOPE = 3;

  private static final double ENOUGH_SECONDS = 120;

  private WaterPlaces() {}

  static List<RoleFinding> findings(Map<String, SensorRecord> water, CoolingLayout layout) {
    boolean isEngineKnown = water.containsKey(WaterCompare.ENGINE_COOLANT);
    Map<String, SensorRecord> pair = new LinkedHashMap<>(water);
    pair.remove(WaterCompare.ENGINE_COOLANT);
    List<RoleFinding> findings = new ArrayList<>();
    if (pair.isEmpty()) {
      return findings;
    }
    Map<String, SensorRecord> seen = RoleSurvey.underBoost(water);
    Optional<Missing> missing = missing(pair, seen);
    if (!isEngineKnown) {
      findings.add(cannotTell(Channels.ENGINE_COOLANT_TEMP, missing).orElseGet(() -> engine(seen)));
    }
    findings.add(
        cannotTell(Channels.CHARGE_COOLANT_TEMP, missing).orElseGet(() -> circuit(seen, layout)));
    return findings;
  }

  private static Optional<RoleFinding> cannotTell(Channel channel, Optional<Missing> missing) {
    return missing.map(why -> new RoleFinding.CannotTell(channel, why));
  }

  private static Optional<Missing> missing(
      Map<String, SensorRecord> pair, Map<String, SensorRecord> seen) {
    if (seen.keySet().stream().noneMatch(pair::containsKey)) {
      return Optional.of(RoleSurvey.unseen(pair));
    }
    boolean isWarm =
        seen.values().stream().anyMatch(each -> each.highest() >= WaterCompare.WARM_CELSIUS);
    return isWarm ? Optional.empty() : Optional.of(new Missing.WarmEngine());
  }

  /** The engine's own parameter, else one that is clearly the hottest. */
  private static Optional<Entry<String, SensorRecord>> engineWater(Map<String, SensorRecord> seen) {
    SensorRecord own = seen.get(WaterCompare.ENGINE_COOLANT);
    if (own != null) {
      return Optional.of(Map.entry(WaterCompare.ENGINE_COOLANT, own));
    }
    List<Entry<String, SensorRecord>> byHeat = new ArrayList<>(seen.entrySet());
    byHeat.sort(Entry.comparingByValue(Comparator.comparingDouble(WaterPlaces::celsius)));
    Entry<String, SensorRecord> hottest = byHeat.getLast();
    double coolest = celsius(byHeat.getFirst().getValue());
    boolean isTold =
        byHeat.size() == 1 || celsius(hottest.getValue()) - coolest >= FAR_APART_KELVIN;
    return isTold ? Optional.of(hottest) : Optional.empty();
  }

  private static double celsius(SensorRecord sensor) {
    return sensor.boost().celsius();
  }

  private static RoleFinding engine(Map<String, SensorRecord> seen) {
    return engineWater(seen)
        .<RoleFinding>map(
            hottest ->
                new RoleFinding.Proposed(
                    Channels.ENGINE_COOLANT_TEMP,
                    hottest.getKey(),
                    Confidence.LIKELY,
                    new Reason.HottestWater(hottest.getValue().highest())))
        .orElseGet(() -> noOther(Channels.ENGINE_COOLANT_TEMP));
  }

  private static RoleFinding noOther(Channel channel) {
    return new RoleFinding.CannotTell(channel, new Missing.NoOtherWater());
  }

  private static RoleFinding circuit(Map<String, SensorRecord> seen, CoolingLayout layout) {
    Optional<Entry<String, SensorRecord>> engine = engineWater(seen);
    if (engine.isEmpty()) {
      return noOther(Channels.CHARGE_COOLANT_TEMP);
    }
    return seen.entrySet().stream()
        .filter(each -> !each.getKey().equals(engine.get().getKey()))
        .filter(each -> isApart(each.getValue()) && warmsWithBoost(each.getValue()))
        .max(Entry.comparingByValue(Comparator.comparingDouble(each -> each.gap().kelvin())))
        .map(own -> circuit(own, engine.get().getValue(), layout))
        .orElseGet(() -> noOther(Channels.CHARGE_COOLANT_TEMP));
  }

  private static boolean warmsWithBoost(SensorRecord sensor) {
    return sensor.trend().isTelling(ENOUGH_SECONDS)
        && sensor.trend().kelvinPer100Kilopascals() >= LEAST_SLOPE;
  }

  private static boolean isApart(SensorRecord sensor) {
    return sensor.gap().seconds() >= ENOUGH_SECONDS && sensor.gap().kelvin() >= APART_KELVIN;
  }

  private static RoleFinding circuit(
      Entry<String, SensorRecord> circuit, SensorRecord engine, CoolingLayout layout) {
    double celsius = celsius(circuit.getValue());
    double engineCelsius = celsius(engine);
    return switch (layout) {
      case WATER_TO_AIR ->
          new RoleFinding.Proposed(
              Channels.CHARGE_COOLANT_TEMP,
              circuit.getKey(),
              Confidence.LIKELY,
              new Reason.OwnCircuit(celsius, engineCelsius, circuit.getValue().gap().kelvin()));
      case AIR_TO_AIR ->
          new RoleFinding.CannotTell(
              Channels.CHARGE_COOLANT_TEMP,
              new Missing.LayoutSaysAir(circuit.getKey(), celsius, engineCelsius));
    };
  }
}
