package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The farm wagon's charge cooler, judged from its samples by the simplest formula there is for an
 * exchanger whose other side stays at one temperature: effectiveness e = (in - out) / (in - air) =
 * 1 - exp(-G / (m c)), so G = -m c ln(1 - e) (Kays and London, Compact Heat Exchangers, from
 * memory), with c = 1006 J/(kg K) of air at room temperature.
 */
class CloggingCoolerTest {
  private static final double HEAT_CAPACITY_AIR = 1.006; // J/(g K)
  private static final Map<String, Double> CONDUCTANCE = conductances();

  @Test
  void conductanceFallsFromTripToTripUntilTheWash() {
    List<Double> before =
        CONDUCTANCE.entrySet().stream()
            .filter(each -> each.getKey().compareTo("2026-06-29") < 0)
            .map(Map.Entry::getValue)
            .toList();

    assertThat(before).hasSizeGreaterThanOrEqualTo(8);
    for (int i = 2; i < before.size(); i++) {
      assertThat(before.get(i)).as("%s", CONDUCTANCE).isLessThan(before.get(i - 2));
    }
    assertThat(before.getLast()).isLessThan(0.85 * before.getFirst());
  }

  @Test
  void washingBringsItBack() {
    // A day in March is 22 K colder: denser air on both sides takes some per cent more.
    double first = on("2026-03-09");
    assertThat(on("2026-06-30"))
        .isCloseTo(first, within(0.1 * first))
        .isGreaterThan(1.15 * on("2026-06-26"));
    assertThat(on("2026-08-07")).as("dust comes back").isLessThan(0.97 * on("2026-07-10"));
  }

  @Test
  void powerIsMissingBeforeTheWashAndBackAfterIt() {
    assertThat(ChangesTest.secondsWithoutPower("2026-06-26", "Farm")).isGreaterThan(120);
    assertThat(ChangesTest.secondsWithoutPower("2026-06-30", "Farm")).isLessThan(30);
  }

  private static double on(String day) {
    return CONDUCTANCE.getOrDefault(day, Double.NaN);
  }

  private static Map<String, Double> conductances() {
    Map<String, Double> found = new LinkedHashMap<>();
    for (TripLog log : TripLog.ofTrips("Farm wagon", "stock trailer", "grade>")) {
      found.put(log.trip.toString().substring(0, 10), conductance(log));
    }
    return found;
  }

  /** Mean over the climb: heavy load at road speed, W/K. */
  private static double conductance(TripLog log) {
    TripLog.Series in = log.channel("charge_air_temp_in[degC]");
    double sum = 0;
    int count = 0;
    for (int i = 0; i < in.size(); i++) {
      long time = in.time(i);
      double flow = log.channel("air_mass_flow[g/s]").at(time);
      if (flow > 105 && log.channel("vehicle_speed[km/h]").at(time) > 75) {
        double air = log.channel("ambient_air_temp[degC]").at(time);
        double out = log.channel("charge_air_temp_out[degC]").at(time);
        double effectiveness = (in.value(i) - out) / (in.value(i) - air);
        sum += -flow * HEAT_CAPACITY_AIR * Math.log(1 - effectiveness);
        count++;
      }
    }
    assertThat(count).as("seconds on the climb, %s", log.trip).isGreaterThan(200);
    return sum / count;
  }
}
