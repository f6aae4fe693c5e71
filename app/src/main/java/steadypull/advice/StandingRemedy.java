package steadypull.advice;

import java.util.Optional;
import java.util.Set;
import steadypull.channel.Channel;

/**
 * Keeps a remedy calm: looked at every few seconds, made stricter at most every 20 s unless the
 * level rises, made milder seldom. What is no longer permitted goes at once.
 */
final class StandingRemedy {
  private static final long LOOK_MICROS = 5_000_000;
  private static final long STRICTER_MICROS = 20_000_000;
  private static final long MILDER_MICROS = 60_000_000;

  private final RemedySearch search;
  private final Following following = new Following();
  private Optional<Remedy> remedy = Optional.empty();
  private long decidedMicros;
  private long lookedMicros;

  StandingRemedy(RemedySearch search) {
    this.search = search;
  }

  Optional<Remedy> remedy() {
    return remedy;
  }

  void drop() {
    remedy = Optional.empty();
    following.begins();
  }

  /** Whether the driver does what is advised, seen at this moment. */
  boolean isFollowed(SituationFacts facts) {
    return remedy.filter(each -> following.isSeen(each, facts)).isPresent();
  }

  /**
   * Looks again if it is time.
   *
   * @param channels the channels that must hold
   * @param isPressing whether a condition holds now
   * @param isWorse whether the level has just risen
   */
  void update(SituationFacts facts, Set<Channel> channels, boolean isPressing, boolean isWorse) {
    long now = facts.timeMicros();
    if (remedy.isEmpty() || isWorse || !search.permits(remedy.get(), facts)) {
      decide(search(facts, channels), facts);
    } else if (isPressing && now - lookedMicros >= LOOK_MICROS) {
      lookedMicros = now;
      consider(search(facts, channels), facts);
    }
  }

  private Remedy search(SituationFacts facts, Set<Channel> channels) {
    return search.search(facts, channels, following.isGearTaken());
  }

  private void consider(Remedy found, SituationFacts facts) {
    long now = facts.timeMicros();
    Remedy present = remedy.orElse(found);
    int change = Double.compare(strictness(found), strictness(present));
    if (change == 0) {
      remedy = Optional.of(found);
    } else if (now - decidedMicros >= (change > 0 ? STRICTER_MICROS : MILDER_MICROS)) {
      decide(found, facts);
    }
  }

  private void decide(Remedy found, SituationFacts facts) {
    remedy = Optional.of(found);
    decidedMicros = facts.timeMicros();
    lookedMicros = facts.timeMicros();
    following.advised(facts);
  }

  private static double strictness(Remedy remedy) {
    return switch (remedy) {
      case Remedy.OnDescent _ -> -3000;
      case Remedy.Standing _ -> -2000;
      case Remedy.EaseOff _ -> -1000;
      case Remedy.AirConditioningOff _ -> -900;
      case Remedy.GearLower _ -> -800;
      case Remedy.EaseTo ease -> -ease.kilometresPerHour();
      case Remedy.NextParkingArea _ -> 0;
    };
  }
}
