package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_SPEED;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitSystem;
import steadypull.thermal.Derate;
import steadypull.vehicle.SpeedRange;

/**
 * Whatever comes in whatever order, an advisory lives by the alarm states of ANSI/ISA-18.2-2016
 * (states as published, transitions from memory): it is raised before it is answered, nothing but
 * its clearing ends it, a warning is never on the shelf, nothing chatters, nothing stays behind.
 */
class LifeCyclePropertyTest {
  private static final long MINUTE_MICROS = 60_000_000;
  private static final int LONGEST_OFF_DELAY_AND_CHATTER_SECONDS = 125;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
  void everyAdvisoryLivesByTheStates(long seed) {
    Random random = new Random(seed);
    List<AdviceEvent> told = drive(random, new Life(seed));
    assertThat(told).as("seed %d has lives to look at", seed).hasSizeGreaterThan(20);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {21, 22})
  void theSameSituationsAndAnswersGiveTheSameEvents(long seed) {
    List<AdviceEvent> once = drive(new Random(seed), new Life(seed));
    assertThat(drive(new Random(seed), new Life(seed))).isEqualTo(once);
  }

  private static List<AdviceEvent> drive(Random random, Life life) {
    Advisor advisor =
        new Advisor(
            Story.vehicle(SpeedRange.DEFAULT), Story.SHIPPED, Locale.ENGLISH, UnitSystem.METRIC);
    List<AdviceEvent> told = new ArrayList<>();
    int second = 0;
    for (int scene = 0; scene < 120; scene++) {
      SituationDraft draft = scene(random);
      for (int count = 1 + random.nextInt(30); count > 0; count--) {
        told.addAll(advisor.step(draft.at(second++)));
        told.addAll(answer(random.nextInt(20), advisor, (second - 1) * 1_000_000L));
        if (advisor.line().response() instanceof AdviceLine.Response.Snoozed) {
          assertThat(advisor.line().state()).isNotEqualTo(AdviceLine.State.ACT_NOW);
        }
      }
    }
    SituationDraft calm = calm();
    for (int count = 0; count < LONGEST_OFF_DELAY_AND_CHATTER_SECONDS; count++) {
      told.addAll(advisor.step(calm.at(second++)));
    }
    life.check(told);
    assertThat(advisor.levels()).as("nothing stays behind").isEmpty();
    return told;
  }

  private static List<AdviceEvent> answer(int choice, Advisor advisor, long now) {
    return switch (choice) {
      case 0 -> advisor.acknowledge(now);
      case 1 -> advisor.snooze(now);
      case 2 -> advisor.show(now);
      default -> List.of();
    };
  }

  private static SituationDraft calm() {
    SituationDraft draft = new SituationDraft().noCodes();
    Channels.thermal().forEach(each -> draft.calm(each, limit(each) - 20, limit(each)));
    return draft;
  }

  private static double limit(Channel channel) {
    return Story.vehicle(SpeedRange.DEFAULT).limit(channel).orElseThrow().celsius();
  }

  private static SituationDraft scene(Random random) {
    SituationDraft draft = calm().speed(60 + random.nextInt(50)).holdsAt(random.nextInt(120));
    for (Channel channel : Channels.thermal()) {
      double limit = limit(channel);
      switch (random.nextInt(12)) {
        case 0 -> draft.nearing(channel, limit + 2, limit, 1, 0);
        case 1 -> draft.nearing(channel, limit - 4, limit, random.nextDouble(), 60);
        case 2 -> draft.may(channel, limit - 8, limit, random.nextDouble());
        case 3 -> draft.noData(channel);
        default -> {}
      }
    }
    switch (random.nextInt(12)) {
      case 0 -> draft.derate(new Derate.Active(ENGINE_COOLANT_TEMP, 0, 20));
      case 1 -> draft.derate(new Derate.PowerLimited(0, 40));
      case 2 -> draft.silent(7);
      case 3 -> draft.with(ENGINE_SPEED, 0);
      default -> {}
    }
    return draft;
  }

  /** What one drive told, held to the states. */
  private static final class Life {
    private final long seed;
    private final Map<String, List<Long>> raised = new HashMap<>();
    private final Map<String, Level> standing = new HashMap<>();

    /** Causes whose last end was by design: an engine that is switched off and on starts anew. */
    private final Map<String, Boolean> ended = new HashMap<>();

    Life(long seed) {
      this.seed = seed;
    }

    void check(List<AdviceEvent> told) {
      for (AdviceEvent event : told) {
        event.rule().flatMap(Story.SHIPPED::cause).ifPresent(cause -> check(cause, event));
      }
      assertThat(standing).as("seed %d: cleared in the end", seed).isEmpty();
    }

    private void check(String cause, AdviceEvent event) {
      String where = "seed %d: %s %s".formatted(seed, event.kind(), event.timeMicros());
      Level level = event.level().orElse(Level.NOTICE);
      switch (event.kind()) {
        case RAISED -> {
          assertThat(standing).as(where).doesNotContainKey(cause);
          standing.put(cause, level);
          chatters(cause, event.timeMicros(), where);
        }
        case ESCALATED -> {
          assertThat(standing.get(cause)).as(where).isLessThan(level);
          standing.put(cause, level);
        }
        case EASED -> {
          assertThat(standing.get(cause)).as(where).isGreaterThan(level);
          standing.put(cause, level);
        }
        case CLEARED -> assertThat(standing.remove(cause)).as(where).isNotNull();
        case SHELVED -> assertThat(standing.get(cause)).as(where).isEqualTo(Level.CAUTION);
        case ACKNOWLEDGED, UNSHELVED, JOINED -> assertThat(standing).as(where).containsKey(cause);
        case SUPPRESSED -> {
          assertThat(standing).as(where).doesNotContainKey(cause);
          ended.put(cause, true);
        }
        case ADVICE_HELD, ADVICE_FAILED, ADVICE_NOT_FOLLOWED ->
            assertThat(standing).as(where).containsKey(cause);
        case DERATE_BEGAN, DERATE_ENDED, POWER_LIMITED, OUT_OF_SERVICE -> {}
      }
    }

    private void chatters(String cause, long now, String where) {
      if (ended.remove(cause) != null) {
        raised.remove(cause);
      }
      List<Long> times = raised.computeIfAbsent(cause, _ -> new ArrayList<>());
      times.add(now);
      int count = times.size();
      if (count >= 3) {
        assertThat(now - times.get(count - 3)).as(where).isGreaterThan(MINUTE_MICROS);
      }
    }
  }
}
