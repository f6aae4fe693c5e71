package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.advice.RuleSet;
import steadypull.channel.Channels;
import steadypull.review.Warning;

/** What counts as a warning, and until when it stands. */
class WarningLogTest {
  private final WarningLog log = new WarningLog(RuleSet.shipped());

  private void say(int second, AdviceEvent.Kind kind, String rule, Level level) {
    log.accept(
        new AdviceEvent(
            second * 1_000_000L,
            kind,
            Optional.of(rule),
            Optional.of(level),
            Optional.of(Channels.ENGINE_OIL_TEMP),
            OptionalDouble.of(120),
            OptionalDouble.of(130),
            OptionalDouble.of(0.8),
            OptionalDouble.of(90),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            ""));
  }

  @Test
  void aWarningThatAnotherRuleEscalatesStandsUntilThatOneIsCleared() {
    say(493, AdviceEvent.Kind.RAISED, "engine-oil-near-limit", Level.CAUTION);
    say(557, AdviceEvent.Kind.ESCALATED, "engine-oil-over-limit", Level.WARNING);
    say(909, AdviceEvent.Kind.CLEARED, "engine-oil-over-limit", Level.WARNING);

    assertThat(log.upTo(2400))
        .containsExactly(new Warning(Channels.ENGINE_OIL_TEMP, 130, 493, 909));
  }

  @Test
  void aNoticeThatIsClearedMeanwhileTakesNoWarningBack() {
    say(185, AdviceEvent.Kind.RAISED, "engine-oil-may-reach-limit", Level.NOTICE);
    say(493, AdviceEvent.Kind.RAISED, "engine-oil-near-limit", Level.CAUTION);
    say(500, AdviceEvent.Kind.CLEARED, "engine-oil-may-reach-limit", Level.NOTICE);

    assertThat(log.upTo(600))
        .isEqualTo(List.of(new Warning(Channels.ENGINE_OIL_TEMP, 130, 493, 601)));
  }
}
