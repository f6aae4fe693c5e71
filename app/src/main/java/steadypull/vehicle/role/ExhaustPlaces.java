package steadypull.vehicle.role;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Map.Entry;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.role.RoleFinding.Confidence;

/**
 * Before or after the turbine: what the compressor puts into the air, the turbine takes out of the
 * exhaust. With little more exhaust than air and nearly the same heat capacity, the exhaust drops
 * by about as much as the air rises (energy balance of a turbocharger, Heywood, Internal Combustion
 * Engine Fundamentals, chapter 6, from memory). Behind the turbine only heavy parts follow, which
 * are slow.
 */
final class ExhaustPlaces {
  /** Drop over the turbine as a share of the least rise by compression; estimated, with lag. */
  private static final double LEAST_SHARE = 0.6;

  private static final double CLEAR_SHARE = 0.8;
  private static final double GREATEST_SHARE = 3;

  /** Sensors of two banks in one place differ by less than this share; estimated. */
  private static final double ALIKE_SHARE = 0.3;

  /** The far side of the turbine is nearly as quick as the near side; estimated. */
  private static final double LEAST_QUICKNESS = 0.5;

  private static final double MOST_SLOWNESS = 99;

  private ExhaustPlaces() {}

  static List<RoleFinding> findings(Map<String, SensorRecord> exhaust) {
    if (exhaust.isEmpty()) {
      return List.of();
    }
    List<Entry<String, SensorRecord>> byHeat =
        new ArrayList<>(RoleSurvey.underBoost(exhaust).entrySet());
    byHeat.sort(
        Comparator.comparingDouble(
            (Entry<String, SensorRecord> each) -> -each.getValue().boost().celsius()));
    if (byHeat.isEmpty()) {
      return both(RoleSurvey.unseen(exhaust));
    }
    Entry<String, SensorRecord> hottest = byHeat.getFirst();
    if (byHeat.size() == 1) {
      return both(new Missing.OnlyOneExhaust(hottest.getKey()));
    }
    Optional<Entry<String, SensorRecord>> next =
        byHeat.stream().filter(each -> share(hottest, each) >= ALIKE_SHARE).findFirst();
    return next.filter(each -> isTurbineBetween(hottest, each))
        .map(each -> acrossTurbine(hottest, each, byHeat))
        .orElseGet(() -> both(noTurbine(hottest, next.orElse(byHeat.get(1)))));
  }

  private static double drop(Entry<String, SensorRecord> hot, Entry<String, SensorRecord> cool) {
    return hot.getValue().boost().celsius() - cool.getValue().boost().celsius();
  }

  private static double share(Entry<String, SensorRecord> hot, Entry<String, SensorRecord> cool) {
    return drop(hot, cool) / hot.getValue().boost().compressionKelvin();
  }

  private static boolean isTurbineBetween(
      Entry<String, SensorRecord> hot, Entry<String, SensorRecord> cool) {
    double share = share(hot, cool);
    return share >= LEAST_SHARE
        && share <= GREATEST_SHARE
        && quickness(cool, hot) >= LEAST_QUICKNESS;
  }

  private static double quickness(
      Entry<String, SensorRecord> one, Entry<String, SensorRecord> other) {
    return one.getValue().trend().quickness() / other.getValue().trend().quickness();
  }

  private static List<RoleFinding> acrossTurbine(
      Entry<String, SensorRecord> before,
      Entry<String, SensorRecord> after,
      List<Entry<String, SensorRecord>> byHeat) {
    double drop = drop(before, after);
    Confidence confidence =
        share(before, after) >= CLEAR_SHARE ? Confidence.CLEAR : Confidence.LIKELY;
    List<RoleFinding> findings = new ArrayList<>();
    findings.add(
        new RoleFinding.Proposed(
            Channels.EXHAUST_TEMP_BEFORE_TURBINE,
            before.getKey(),
            confidence,
            new Reason.BeforeTurbine(celsius(before), drop, after.getKey())));
    findings.add(
        new RoleFinding.Proposed(
            Channels.EXHAUST_TEMP_AFTER_TURBINE,
            after.getKey(),
            confidence,
            new Reason.AfterTurbine(celsius(after), drop, before.getKey())));
    int rest = byHeat.indexOf(after) + 1;
    if (rest < byHeat.size()) {
      findings.add(behindHeavyPart(after, byHeat.subList(rest, byHeat.size())));
    }
    return findings;
  }

  private static RoleFinding behindHeavyPart(
      Entry<String, SensorRecord> after, List<Entry<String, SensorRecord>> others) {
    Entry<String, SensorRecord> last = others.getLast();
    return quickness(last, after) >= LEAST_QUICKNESS
        ? new RoleFinding.CannotTell(
            Channels.EXHAUST_TEMP_AFTER_TREATMENT, new Missing.NoSlowExhaust())
        : new RoleFinding.Proposed(
            Channels.EXHAUST_TEMP_AFTER_TREATMENT,
            last.getKey(),
            Confidence.LIKELY,
            new Reason.BehindHeavyPart(
                celsius(last), Math.min(MOST_SLOWNESS, 1 / quickness(last, after))));
  }

  private static double celsius(Entry<String, SensorRecord> each) {
    return each.getValue().boost().celsius();
  }

  private static Missing noTurbine(
      Entry<String, SensorRecord> hottest, Entry<String, SensorRecord> next) {
    return new Missing.NoTurbineBetween(
        hottest.getKey(),
        next.getKey(),
        drop(hottest, next),
        LEAST_SHARE * hottest.getValue().boost().compressionKelvin());
  }

  private static List<RoleFinding> both(Missing missing) {
    List<Channel> channels =
        List.of(Channels.EXHAUST_TEMP_BEFORE_TURBINE, Channels.EXHAUST_TEMP_AFTER_TURBINE);
    return channels.stream()
        .<RoleFinding>map(channel -> new RoleFinding.CannotTell(channel, missing))
        .toList();
  }
}
