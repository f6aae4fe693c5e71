package steadypull.thermal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/**
 * Scores a forecaster as the rules would use it: an advisory is raised when its sign has lasted 3 s
 * and ends when it has been gone for 20 s. It counts for a derate if it is there from 5 s before
 * the derate begins on, whatever the channel; it is false if its channel does not come within 2 K
 * of its limit in the 180 s after it was raised, 600 s for the slow ones. The first two minutes of
 * a drive do not count.
 */
final class ForecastScore {
  /** Channels that move slowly. */
  static final List<Channel> SLOW =
      List.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final int UNSCORED_SECONDS = 120;
  private static final int ON_SECONDS = 3;
  private static final int OFF_SECONDS = 20;
  private static final int LEAST_LEAD_SECONDS = 5;
  private static final double NEAR_KELVIN = 2;

  /** Says at each second how strongly a channel should be warned of. */
  interface Sign {
    /** 0.5 or more raises, less than 0.3 ends. */
    double at(Backtest drive, Limit limit, int second);
  }

  private record Advisory(Channel channel, int from, int until) {}

  private final Sign sign;
  private final List<Double> leads = new ArrayList<>();
  private int derates;
  private int falses;
  private double hours;

  ForecastScore(Sign sign) {
    this.sign = sign;
  }

  /** The probability of the forecaster itself. */
  static double forecast(Backtest drive, Limit limit, int second) {
    return drive.probability(limit.channel(), second);
  }

  /** A lamp that is lit 5 K under the limit. */
  static double fixedThreshold(Backtest drive, Limit limit, int second) {
    double under = limit.celsius() - drive.heard(limit.channel(), second);
    return under <= 5 ? 1 : under <= 7 ? 0.4 : 0;
  }

  /** The least-squares line through the last minute, drawn on for two. */
  static double straightLine(Backtest drive, Limit limit, int second) {
    double x = 0;
    double y = 0;
    double xx = 0;
    double xy = 0;
    for (int before = 0; before <= 60; before++) {
      double celsius = drive.heard(limit.channel(), second - before);
      x -= before;
      y += celsius;
      xx += before * before;
      xy -= before * celsius;
    }
    double slope = (61 * xy - x * y) / (61 * xx - x * x);
    double reached = (y - slope * x) / 61 + slope * 120;
    return reached >= limit.celsius() ? 1 : reached >= limit.celsius() - 2 ? 0.4 : 0;
  }

  /** Adds one drive. */
  void add(Backtest drive, Vehicle vehicle) {
    List<Advisory> advisories = new ArrayList<>();
    for (Limit limit : vehicle.limits().values()) {
      advisories.addAll(advisories(drive, limit));
    }
    for (double begins : drive.derateBeginnings()) {
      if (begins >= UNSCORED_SECONDS) {
        derates++;
        lead(advisories, begins).ifPresent(leads::add);
      }
    }
    for (Advisory each : advisories) {
      Limit limit = vehicle.limit(each.channel()).orElseThrow();
      falses += each.from() >= UNSCORED_SECONDS && !comesNear(drive, limit, each.from()) ? 1 : 0;
    }
    hours += (drive.ticks() - UNSCORED_SECONDS) / 3600.0;
  }

  private List<Advisory> advisories(Backtest drive, Limit limit) {
    List<Advisory> advisories = new ArrayList<>();
    int lasted = 0;
    int gone = 0;
    int from = 0;
    for (int second = UNSCORED_SECONDS / 2 + 1; second <= drive.ticks(); second++) {
      double strength = sign.at(drive, limit, second);
      lasted = strength >= 0.5 ? lasted + 1 : 0;
      gone = strength >= 0.3 ? 0 : gone + 1;
      if (from == 0 && lasted > ON_SECONDS) {
        from = second;
      } else if (from > 0 && gone > OFF_SECONDS) {
        advisories.add(new Advisory(limit.channel(), from, second));
        from = 0;
      }
    }
    if (from > 0) {
      advisories.add(new Advisory(limit.channel(), from, drive.ticks() + 1));
    }
    return advisories;
  }

  private static Optional<Double> lead(List<Advisory> advisories, double begins) {
    return advisories.stream()
        .filter(each -> each.from() <= begins - LEAST_LEAD_SECONDS && each.until() >= begins)
        .map(each -> begins - each.from())
        .max(Double::compare);
  }

  private static boolean comesNear(Backtest drive, Limit limit, int from) {
    int horizon = SLOW.contains(limit.channel()) ? 600 : 180;
    for (int second = from; second <= Math.min(drive.ticks(), from + horizon); second++) {
      if (drive.heard(limit.channel(), second) >= limit.celsius() - NEAR_KELVIN) {
        return true;
      }
    }
    return false;
  }

  int derates() {
    return derates;
  }

  int warned() {
    return leads.size();
  }

  double falsePerHour() {
    return falses / hours;
  }

  /** A quantile of the leads, s; 0 without any. */
  double lead(double level) {
    Collections.sort(leads);
    return leads.isEmpty() ? 0 : leads.get((int) (level * (leads.size() - 1)));
  }

  @Override
  public String toString() {
    return "warned %d of %d, lead p10 %.0f s, median %.0f s, false %.2f an hour"
        .formatted(warned(), derates, lead(0.1), lead(0.5), falsePerHour());
  }
}
