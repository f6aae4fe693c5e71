package steadypull.compare;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.thermal.Belief;

/**
 * What a change did to one channel. Intervals hold the truth nine times in ten. Immutable; empty
 * where it cannot be told, and then a caveat says why.
 *
 * @param channel compared
 * @param isAboveOutside whether temperatures are degrees above outside; absolute otherwise
 * @param runs every one, rejected ones with the reason
 * @param outsideCelsius to which both sides were brought
 * @param powerKilowatts likewise
 * @param limitCelsius against which times to the limit count
 * @param verdict of the lasting, settled gain
 * @param delayVerdict of the gain at 60 s
 * @param settledGain how much cooler it settles, K
 * @param smallestDetectable change that these runs could have shown, K
 * @param equivalentWithin no difference larger than this, K, where that can be said
 * @param at 15, 30, 60, 90, 120 s
 * @param lasts share of the gain at 120 s that lasts (more heat rejection), K
 * @param delays share of it that only delays (more coolant), K
 * @param before figures of the one side
 * @param after and of the other
 * @param beforeCourse drawn from the onset
 * @param afterCourse likewise
 * @param beforeKilowatts power held, mean of the runs and between which of them it lay
 * @param afterKilowatts likewise
 * @param commonSeconds since the onset until which every run held its load; measured so far
 * @param lastingGain over time, the part that lasts
 * @param delayingGain over time, the part that fades
 * @param caveats sentences
 */
public record Comparison(
    Channel channel,
    boolean isAboveOutside,
    RunSet runs,
    OptionalDouble outsideCelsius,
    OptionalDouble powerKilowatts,
    OptionalDouble limitCelsius,
    Verdict verdict,
    Verdict delayVerdict,
    Optional<Belief> settledGain,
    OptionalDouble smallestDetectable,
    OptionalDouble equivalentWithin,
    List<GainAt> at,
    Optional<Belief> lasts,
    Optional<Belief> delays,
    SideFigures before,
    SideFigures after,
    Course beforeCourse,
    Course afterCourse,
    Course beforeKilowatts,
    Course afterKilowatts,
    int commonSeconds,
    Course lastingGain,
    Course delayingGain,
    List<String> caveats) {
  public Comparison {
    at = List.copyOf(at);
    caveats = List.copyOf(caveats);
  }
}
