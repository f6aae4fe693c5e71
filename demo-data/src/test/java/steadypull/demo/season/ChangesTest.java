package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Before and after, recomputed from samples. What is expected is the lumped circuit's closed form
 * (one store C, one conductance G, heat P): it settles at P / G above the air, so that only G moves
 * the end, and the rise so far is P / G (1 - exp(-t G / C)), so that C moves the way there
 * (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, chapter 5, from memory).
 */
class ChangesTest {
  private static final long SECOND = 1_000_000;

  /** What a hold on the dynamometer shows: K above the air of the room. */
  private record Hold(double settled, double afterTwoMinutes) {}

  @Test
  void repeatsOnSeparateDaysAgree() {
    for (String vehicle : List.of("van", "Crew truck", "Tipper")) {
      List<Hold> holds = holds(vehicle, "baseline");
      assertThat(holds).hasSizeGreaterThanOrEqualTo(3);
      for (Hold hold : holds) {
        // Rooms of 17 to 21 degC: a compressor heats warm air by more.
        assertThat(hold.settled()).as(vehicle).isCloseTo(settled(holds), within(1.5));
      }
    }
  }

  @Test
  void moreCoolantOnlyDelays() {
    List<Hold> before = holds("van", "baseline");
    List<Hold> after = holds("van", "expansion tank");

    assertThat(settled(after)).isCloseTo(settled(before), within(1.0));
    assertThat(afterTwoMinutes(after)).isLessThan(afterTwoMinutes(before) - 6);
  }

  @Test
  void oneMoreExchangerSettlesLower() {
    List<Hold> before = holds("Crew truck", "baseline");
    List<Hold> after = holds("Crew truck", "second radiator in");

    assertThat(after).hasSizeGreaterThanOrEqualTo(3);
    assertThat(settled(after)).isBetween(settled(before) - 16, settled(before) - 6);
    assertThat(after)
        .allSatisfy(hold -> assertThat(hold.settled()).isLessThan(settled(before) - 5));
  }

  @Test
  void bothDelayAndSettleLower() {
    List<Hold> before = holds("van", "baseline");
    List<Hold> after = holds("van", "second radiator and");

    assertThat(settled(after)).isLessThan(settled(before) - 4);
    assertThat(afterTwoMinutes(after)).isLessThan(afterTwoMinutes(before) - 6);
  }

  @Test
  void anAdditiveDoesNothing() {
    List<Hold> before = holds("Tipper", "baseline");
    List<Hold> after = holds("Tipper", "wetting agent");

    assertThat(settled(after)).isCloseTo(settled(before), within(1.0));
    assertThat(afterTwoMinutes(after)).isCloseTo(afterTwoMinutes(before), within(1.0));
  }

  @Test
  void theSecondRadiatorGivesThePowerBackOnAHotClimb() {
    assertThat(secondsWithoutPower("2026-05-21", "Crew truck")).isGreaterThan(90);
    assertThat(secondsWithoutPower("2026-07-02", "Crew truck")).isLessThan(30);
  }

  private static List<Hold> holds(String vehicle, String words) {
    return TripLog.ofTrips(vehicle, " hold", words).stream().map(ChangesTest::hold).toList();
  }

  private static Hold hold(TripLog log) {
    TripLog.Series coolant = log.channel("charge_coolant_temp[degC]");
    long begins = log.markMicros("hold begins");
    long ends = log.markMicros("hold ends");
    double air = log.channel("ambient_air_temp[degC]").mean(begins, ends);
    return new Hold(
        coolant.mean(ends - 240 * SECOND, ends) - air,
        coolant.mean(begins + 115 * SECOND, begins + 125 * SECOND) - air);
  }

  private static double settled(List<Hold> holds) {
    return holds.stream().mapToDouble(Hold::settled).average().orElseThrow();
  }

  private static double afterTwoMinutes(List<Hold> holds) {
    return holds.stream().mapToDouble(Hold::afterTwoMinutes).average().orElseThrow();
  }

  /** Delivered torque at least five points under what is demanded; gear changes take some too. */
  static double secondsWithoutPower(String day, String vehicle) {
    TripLog log = TripLog.ofTrips(day, vehicle).getFirst();
    TripLog.Series demanded = log.channel("demanded_torque[%]");
    TripLog.Series delivered = log.channel("delivered_torque[%]");
    int missing = 0;
    for (int i = 0; i < demanded.size(); i++) {
      missing += demanded.value(i) - delivered.value(i) >= 5 ? 1 : 0;
    }
    return missing * 0.25;
  }
}
