package steadypull.adapter.polling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PollingPlanTest {
  private static final long MILLISECOND = 1_000_000L;

  private long now = 5_000 * MILLISECOND;

  /**
   * Runs a plan against a link whose replies take a time; counts how often each number went out.
   */
  private Map<Integer, Integer> run(PollingPlan plan, Duration reply, Duration span) {
    Map<Integer, Integer> counts = new HashMap<>();
    long end = now + span.toNanos();
    while (now < end) {
      switch (plan.next(now)) {
        case PollRequest.Wait wait -> {
          assertThat(wait.untilNanoTime()).isGreaterThan(now);
          now = wait.untilNanoTime();
        }
        case PollRequest.CurrentData request -> {
          request.parameters().forEach(number -> counts.merge(number, 1, Integer::sum));
          now += reply.toNanos();
        }
        case PollRequest.Identified request -> {
          counts.merge(-request.target().identifier(), 1, Integer::sum);
          now += reply.toNanos();
        }
      }
    }
    return counts;
  }

  /** ISO 15765-2: 7 payload bytes in a single frame, else 6 and then 7 in each. */
  private static int frames(int payloadBytes) {
    return payloadBytes <= 7 ? 1 : 1 + (payloadBytes - 6 + 6) / 7;
  }

  private PollingPlan plan(Pacing pacing, boolean packs, int... numbers) {
    PollingPlan plan = new PollingPlan(pacing, PollingPlanTest::frames);
    for (int number : numbers) {
      PollTarget target = new PollTarget.Parameter(number);
      plan.add(target, Urgency.ofParameter(number), "7E8", now);
      plan.learnt(target, packs ? 1 : 0);
    }
    return plan;
  }

  @Test
  void classesKeepTheirPeriods() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C, 0x0D, 0x67, 0x46);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(30), Duration.ofSeconds(100));

    assertThat(counts.get(0x0C)).isBetween(398, 440);
    assertThat(counts.get(0x67)).isBetween(99, 130);
    assertThat(counts.get(0x46)).isBetween(10, 13);
  }

  @Test
  void requestIsFilledUpToSix() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x61, 0x62, 0x67);

    assertThat(plan.next(now))
        .isEqualTo(new PollRequest.CurrentData(List.of(0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x61)));
  }

  @Test
  void whatDoesNotPackGoesAlone() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C, 0x0D);
    plan.askSingly();

    assertThat(plan.next(now)).isEqualTo(new PollRequest.CurrentData(List.of(0x0C)));
    assertThat(plan.next(now)).isInstanceOf(PollRequest.Wait.class);
    assertThat(plan.next(now + 50 * MILLISECOND))
        .isEqualTo(new PollRequest.CurrentData(List.of(0x0D)));
  }

  /** A line damaged on the way looks like a control unit that cannot share, but it passes. */
  @Test
  void sharingIsTriedAgainAfterHalfAMinute() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C, 0x0D);
    plan.askSingly();
    plan.next(now);
    plan.next(now + 50 * MILLISECOND);

    assertThat(plan.next(now + 29_950 * MILLISECOND))
        .isEqualTo(new PollRequest.CurrentData(List.of(0x0C)));
    plan.next(now + 29_990 * MILLISECOND);
    assertThat(plan.next(now + 31_000 * MILLISECOND))
        .isEqualTo(new PollRequest.CurrentData(List.of(0x0C, 0x0D)));
  }

  @Test
  void politePaceNeverExceedsTwentyRequestsASecond() {
    PollingPlan plan = new PollingPlan(Pacing.polite(1), PollingPlanTest::frames);
    for (int number = 1; number < 100; number++) {
      plan.add(new PollTarget.Parameter(number), Urgency.FAST, "7E8", now);
    }
    List<Long> starts = new ArrayList<>();
    while (starts.size() < 200) {
      switch (plan.next(now)) {
        case PollRequest.Wait wait -> now = wait.untilNanoTime();
        case PollRequest.CurrentData request -> starts.add(now);
        case PollRequest.Identified request -> throw new AssertionError(request);
      }
    }
    for (int i = 20; i < starts.size(); i++) {
      assertThat(starts.get(i) - starts.get(i - 20)).isGreaterThanOrEqualTo(1000 * MILLISECOND);
    }
  }

  // A link that is too slow must slow everything alike and starve nothing.
  @Test
  void slowLinkStarvesNobody() {
    PollingPlan plan = plan(Pacing.polite(1), false, 0x0C, 0x0D, 0x04, 0x61, 0x67, 0x77, 0x46);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(200), Duration.ofSeconds(100));

    assertThat(counts.keySet()).hasSize(7);
    assertThat(counts.get(0x46)).isGreaterThanOrEqualTo(5);
    assertThat(counts.get(0x67)).isGreaterThan(50);
    assertThat(counts.getOrDefault(0x0C, 0)).isCloseTo(counts.getOrDefault(0x61, 0), within(3));
  }

  // The fast class is stretched first; what is late by less than its period keeps its rate.
  @Test
  void slowLinkMakesEverythingLateByTheSameSpan() {
    PollingPlan plan = plan(Pacing.polite(1), false, 0x0C, 0x0D, 0x04, 0x61, 0x67, 0x77, 0x46);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(400), Duration.ofSeconds(1000));

    double late = secondsBetween(counts, 0x0C) - 0.25;
    assertThat(late).isGreaterThan(1);
    assertThat(secondsBetween(counts, 0x61) - 0.25).isCloseTo(late, within(0.1));
    assertThat(secondsBetween(counts, 0x67) - 1).isCloseTo(late, within(0.4));
    assertThat(secondsBetween(counts, 0x46)).as("late by less than a period").isLessThan(10.5);
  }

  private static double secondsBetween(Map<Integer, Integer> countsIn1000Seconds, int number) {
    return 1000.0 / countsIn1000Seconds.getOrDefault(number, 0);
  }

  /** A plan at full pace on a link with such costs, and the first packs that it makes then. */
  private List<PollRequest.CurrentData> packs(double requestMillis, double lineMillis) {
    PollingPlan plan = plan(Pacing.full(6), true, 0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x61, 0x62, 0x5A);
    plan.learnt(new PollTarget.Parameter(0x0C), 2);
    List<PollRequest.CurrentData> packs = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      now += MILLISECOND;
      if (plan.next(now) instanceof PollRequest.CurrentData request) {
        int lines = frames(plan.answerBytes(request));
        // Now and then an answer is shorter, so that both parts can be told apart.
        plan.took(request, (long) ((requestMillis + lineMillis * lines) * MILLISECOND));
        plan.took(
            new PollRequest.CurrentData(List.of(0x04)),
            (long) ((requestMillis + lineMillis) * MILLISECOND));
        packs.add(request);
      }
    }
    return packs.subList(20, packs.size());
  }

  @Test
  void linesAreFilledWhereLinesCostMost() {
    assertThat(packs(4, 5.5))
        .allSatisfy(pack -> assertThat(frames(bytes(pack))).as(pack.toString()).isEqualTo(2))
        .allSatisfy(pack -> assertThat(pack.parameters()).hasSizeGreaterThanOrEqualTo(5));
  }

  @Test
  void requestsAreFilledWhereTheAnswerTimeCostsMost() {
    assertThat(packs(26, 0.3)).allSatisfy(pack -> assertThat(pack.parameters()).hasSize(6));
  }

  private static int bytes(PollRequest.CurrentData pack) {
    return 1 + pack.parameters().stream().mapToInt(number -> number == 0x0C ? 3 : 2).sum();
  }

  // Seven that are always due and six places: none may wait for ever behind the others.
  @Test
  void sevenFastOnesShareSixPlacesEvenly() {
    PollingPlan plan = plan(Pacing.full(6), true, 0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x61, 0x62);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(20), Duration.ofSeconds(20));

    assertThat(counts.values()).allSatisfy(count -> assertThat(count).isBetween(850, 864));
  }

  @Test
  void targetsOfDifferentControlUnitsDoNotShareARequest() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C, 0x0D);
    plan.add(new PollTarget.Parameter(0x05), Urgency.MEDIUM, "7E9", now);
    plan.learnt(new PollTarget.Parameter(0x05), 1);

    assertThat(plan.next(now)).isEqualTo(new PollRequest.CurrentData(List.of(0x0C, 0x0D)));
    assertThat(plan.next(now + 50 * MILLISECOND))
        .isEqualTo(new PollRequest.CurrentData(List.of(0x05)));
  }

  // What stays away would make the adapter wait for it, and the others with it.
  @Test
  void whatMissesAgainAndAgainDoesNotRideAlong() {
    PollingPlan plan = plan(Pacing.full(6), true, 0x0C, 0x0D);
    for (int i = 0; i < 5; i++) {
      plan.missed(new PollTarget.Parameter(0x0D));
    }

    for (int i = 0; i < 10; i++) {
      now += 20 * MILLISECOND;
      assertThat(plan.next(now))
          .isIn(
              new PollRequest.CurrentData(List.of(0x0C)),
              new PollRequest.CurrentData(List.of(0x0D)));
    }
  }

  @Test
  void fullPaceAsksFastOnesWheneverNothingElseIsDue() {
    PollingPlan plan = plan(Pacing.full(6), true, 0x0C, 0x67);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(20), Duration.ofSeconds(10));

    assertThat(counts.get(0x0C)).isGreaterThan(480);
    assertThat(counts.get(0x67)).isBetween(9, 14);
  }

  @Test
  void whatNeverAnswersIsAskedSeldom() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C);
    PollTarget target = new PollTarget.Parameter(0x0C);
    int asked = 0;
    long end = now + Duration.ofMinutes(2).toNanos();
    while (now < end) {
      if (plan.next(now) instanceof PollRequest.Wait(long until)) {
        now = until;
      } else {
        asked++;
        plan.missed(target);
      }
    }
    assertThat(asked).isBetween(6, 12);

    plan.answered(target);
    assertThat(run(plan, Duration.ofMillis(20), Duration.ofSeconds(40)).get(0x0C))
        .as("and often again once it answers")
        .isGreaterThan(30);
  }

  @Test
  void droppedTargetIsNeverAskedAndPostponedOneLater() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C, 0x67);
    plan.drop(new PollTarget.Parameter(0x0C));
    plan.postpone(new PollTarget.Parameter(0x67), Duration.ofSeconds(30), now);

    assertThat(plan.next(now))
        .isEqualTo(new PollRequest.Wait(now + Duration.ofSeconds(30).toNanos()));
  }

  @Test
  void identifierGoesAloneBetweenParameters() {
    PollingPlan plan = plan(Pacing.polite(6), true, 0x0C);
    plan.add(new PollTarget.Identifier("7E1", 0x1E1C), Urgency.MEDIUM, "7E1", now);

    Map<Integer, Integer> counts = run(plan, Duration.ofMillis(30), Duration.ofSeconds(20));

    assertThat(counts.get(-0x1E1C)).isBetween(19, 22);
    assertThat(counts.get(0x0C)).isGreaterThan(75);
  }
}
