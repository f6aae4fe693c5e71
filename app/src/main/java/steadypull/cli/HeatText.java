package steadypull.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LearntQuantity;
import steadypull.vehicle.Vehicle;

/** What is known of a vehicle's cooling from its trips, as lines of text. */
final class HeatText {
  /** From the 5 % to the 95 % quantile of a normal distribution. */
  private static final double NINETY_PERCENT = 1.645;

  /**
   * How a quantity is told.
   *
   * @param id of the quantity
   * @param words with %s for the figure, its interval behind it
   * @param unit behind the figure
   * @param told turns the quantity into what people read
   */
  private record Words(String id, String words, String unit, DoubleUnaryOperator told) {}

  private static final List<Words> WORDS =
      List.of(
          new Words("charge_coolant.heat_capacity_J_per_K", "%s", "kJ/K", HeatText::thousands),
          new Words(
              "charge_coolant.conductance_W_per_K", "moves %s at 90 km/h", "W/K", HeatText::asItIs),
          new Words(
              "charge_air.transfer_units",
              "its cooler takes %s of the charge's heat at 0.2 kg/s",
              "%",
              HeatText::effectiveness),
          new Words(
              "charge_inlet.compressor_efficiency",
              "compressor at %s",
              "% efficiency",
              HeatText::percent),
          new Words("engine_coolant.heat_capacity_J_per_K", "%s", "kJ/K", HeatText::thousands),
          new Words(
              "engine_coolant.conductance_W_per_K", "moves %s at 90 km/h", "W/K", HeatText::asItIs),
          new Words(
              "engine_coolant.thermostat_opens_degC",
              "thermostat opens at %s",
              "degC",
              HeatText::asItIs),
          new Words(
              "engine_oil.above_coolant_K_per_hundred_kW",
              "%s above coolant for each 100 kW of fuel",
              "K",
              HeatText::asItIs),
          new Words(
              "transmission_fluid.above_cooling_K_per_hundred_kW",
              "%s above what cools it for each 100 kW",
              "K",
              HeatText::asItIs),
          new Words(
              "exhaust.share_of_fuel",
              "%s of the fuel's heat before the turbine",
              "%",
              HeatText::percent));

  private HeatText() {}

  private static double asItIs(double value) {
    return value;
  }

  private static double thousands(double value) {
    return value / 1000;
  }

  private static double percent(double share) {
    return 100 * share;
  }

  /** Per cent of a cooler whose cold side hardly warms: 1 - exp(-NTU). */
  private static double effectiveness(double transferUnits) {
    return 100 * -Math.expm1(-transferUnits);
  }

  /** Empty where nothing was learnt and nothing fitted. */
  static String of(Vehicle vehicle) {
    StringBuilder text = new StringBuilder();
    Configuration now = vehicle.configuration();
    if (!now.fitted().isEmpty()) {
      text.append(
          String.format(
              Locale.ROOT,
              "fitted since %s: %s (%s learnt anew)%n",
              now.since().toString().substring(0, 10),
              now.fitted(),
              circuits(now)));
    }
    known(now.learnt()).forEach((circuit, line) -> text.append(line).append('\n'));
    return text.toString();
  }

  /** The circuits that a fitting touched, in words. */
  static String circuits(Configuration configuration) {
    return configuration.touched().size() == Circuit.values().length
        ? "everything"
        : configuration.touched().stream().map(Circuit::title).collect(Collectors.joining(", "));
  }

  private static Map<Circuit, String> known(LearntHeat learnt) {
    Map<Circuit, List<String>> parts = new EnumMap<>(Circuit.class);
    Map<Circuit, Integer> trips = new EnumMap<>(Circuit.class);
    for (Words words : WORDS) {
      Optional<LearntQuantity> known = learnt.of(words.id());
      known.ifPresent(
          each -> {
            Circuit circuit = each.quantity().circuit();
            parts.computeIfAbsent(circuit, _ -> new ArrayList<>()).add(told(words, each));
            trips.merge(circuit, each.trips(), Math::max);
          });
    }
    Map<Circuit, String> lines = new EnumMap<>(Circuit.class);
    parts.forEach(
        (circuit, all) ->
            lines.put(
                circuit,
                "%s: %s, %s"
                    .formatted(
                        circuit.title(),
                        String.join(", ", all),
                        from(trips.getOrDefault(circuit, 0)))));
    return lines;
  }

  private static String from(int trips) {
    return trips == 0 ? "carried over" : "from " + Counted.of(trips, "trip", "trips");
  }

  private static String told(Words words, LearntQuantity learnt) {
    double[] figures =
        Stream.of(0.0, -NINETY_PERCENT, NINETY_PERCENT)
            .mapToDouble(
                spreads ->
                    words
                        .told()
                        .applyAsDouble(
                            learnt.quantity().physical(learnt.mean() + spreads * learnt.spread())))
            .toArray();
    String figure =
        "%s %s (%s to %s)"
            .formatted(rounded(figures[0]), words.unit(), rounded(figures[1]), rounded(figures[2]));
    return words.words().replace("%s", figure);
  }

  /** Two figures, three from 100 on: no more is known. */
  static String rounded(double value) {
    double size = Math.abs(value);
    String pattern = size >= 10 ? "%.0f" : "%.1f";
    double step = size >= 200 ? 10 : 1;
    return String.format(Locale.ROOT, pattern, size >= 10 ? step * Math.rint(value / step) : value);
  }
}
