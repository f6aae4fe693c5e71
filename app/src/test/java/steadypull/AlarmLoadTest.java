package steadypull;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.advice.RuleSet;

/**
 * Some trips of the demo season, towing and not, held to the figures of ANSI/ISA-18.2-2016 and
 * EEMUA 191 (from memory); the whole season is in {@link AlarmLoadBenchTest}.
 */
@Execution(ExecutionMode.CONCURRENT)
class AlarmLoadTest {
  /** A hot grade with a derate, a link that comes loose, a long drive without a trailer. */
  private static final int[] TRIPS = {48, 29, 40};

  private final AlarmLoad load = new AlarmLoad(RuleSet.shipped());

  @Test
  void aDriverIsSeldomAskedForAnythingAndNeverInVain() throws Exception {
    for (int trip : TRIPS) {
      AlarmSeason.drive(AlarmSeason.trips().get(trip), load);
    }
    AlarmSeason.check(load);
    assertThat(load.announced()).as("there was something to say").isPositive();
  }

  @Test
  void theMeterSeesAFloodChatterAndWhatStands() {
    List<AdviceEvent> told = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      told.add(event(10 * i, AdviceEvent.Kind.RAISED, Level.CAUTION));
      told.add(event(10 * i + 5, AdviceEvent.Kind.CLEARED, Level.CAUTION));
    }
    told.add(event(1000, AdviceEvent.Kind.RAISED, Level.NOTICE));
    load.add("invented", false, told, 1200);
    assertThat(load.worstHour()).isEqualTo(12);
    assertThat(load.worstNotTowing()).isEqualTo(12);
    assertThat(load.floodShare()).isEqualTo(0.5);
    assertThat(load.chattering()).isNotEmpty();
    assertThat(load.longestStandingSeconds()).isEqualTo(200);
    assertThat(load.shareOf(Level.CAUTION)).isEqualTo(12.0 / 13);
  }

  private static AdviceEvent event(double second, AdviceEvent.Kind kind, Level level) {
    OptionalDouble none = OptionalDouble.empty();
    return new AdviceEvent(
        Math.round(second * 1e6),
        kind,
        Optional.of("charge-air-near-limit"),
        Optional.of(level),
        Optional.empty(),
        none,
        none,
        none,
        none,
        none,
        none,
        none,
        "");
  }
}
