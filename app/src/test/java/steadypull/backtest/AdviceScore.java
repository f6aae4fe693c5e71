package steadypull.backtest;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * How well advice warned of derates. An advisory counts for a derate if it is active from at least 5
 * s before it begins. It is false if its channel does not come within 2 K of its limit in the 180 s
 * after it was raised, 600 s for engine coolant and the oils. The first two minutes do not count.
 */
final class AdviceScore {
  private static final Set<Channel> SLOW =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private static final int UNSCORED_SECONDS = 120;
  private static final int LEAST_LEAD_SECONDS = 5;
  private static final double NEAR_KELVIN = 2;

  /** An advisory: what it was about, and from when to when it stood. */
  record Advisory(Channel channel, double limit, int from, int until) {}

  private final List<Double> leads = new ArrayList<>();
  private final List<String> misses = new ArrayList<>();
  private final List<String> lies = new ArrayList<>();
  private int derates;
  private int advisories;
  private double hours;

  void add(WorldDrive drive) {
    List<Advisory> said = advisories(drive);
    for (int[] derate : drive.derates()) {
      if (derate[0] >= UNSCORED_SECONDS) {
        derates++;
        lead(drive, said, derate);
      }
    }
    for (Advisory each : said) {
      if (each.from() >= UNSCORED_SECONDS) {
        advisories++;
        double nearest = nearest(drive, each);
        if (nearest > NEAR_KELVIN) {
          lies.add(
              "world %d: %s at %d s, nearest %.1f K"
                  .formatted(drive.world().number(), each.channel().id(), each.from(), nearest));
        }
      }
    }
    hours += (drive.seconds() - UNSCORED_SECONDS) / 3600.0;
  }

  private void lead(WorldDrive drive, List<Advisory> said, int[] derate) {
    double lead =
        said.stream()
            .filter(
                each -> each.from() <= derate[0] - LEAST_LEAD_SECONDS && each.until() >= derate[0])
            .mapToDouble(each -> derate[0] - each.from())
            .max()
            .orElse(0);
    if (lead > 0) {
      leads.add(lead);
    }
    if (lead < 80) {
      misses.add(
          "world %d: derate at %d to %d s, lead %.0f s, %s"
              .formatted(drive.world().number(), derate[0], derate[1], lead, hot(drive, derate[0])));
    }
  }

  /** The channels at their limits at a second. */
  private static String hot(WorldDrive drive, int second) {
    return drive.world().vehicle().limits().values().stream()
        .filter(limit -> drive.celsius().containsKey(limit.channel()))
        .filter(limit -> drive.celsius().get(limit.channel())[second] > limit.celsius() - 3)
        .map(limit -> limit.channel().id())
        .toList()
        .toString();
  }

  private static List<Advisory> advisories(WorldDrive drive) {
    List<Advisory> advisories = new ArrayList<>();
    AdviceEvent open = null;
    for (AdviceEvent event : drive.events()) {
      boolean isAsking =
          event.level().filter(level -> level != Level.NOTICE).isPresent()
              && event.channel().isPresent();
      if (!isAsking) {
        continue;
      }
      switch (event.kind()) {
        case RAISED -> open = event.secondsToLimit().isPresent() ? event : open;
        case CLEARED -> {
          if (open != null) {
            advisories.add(advisory(open, (int) (event.timeMicros() / 1_000_000)));
          }
          open = null;
        }
        case ESCALATED,
            EASED,
            ACKNOWLEDGED,
            SHELVED,
            UNSHELVED,
            DERATE_BEGAN,
            DERATE_ENDED,
            POWER_LIMITED -> {}
      }
    }
    if (open != null) {
      advisories.add(advisory(open, drive.seconds() + 1));
    }
    return advisories;
  }

  private static Advisory advisory(AdviceEvent raised, int until) {
    return new Advisory(
        raised.channel().orElseThrow(),
        raised.limit().orElseThrow(),
        (int) (raised.timeMicros() / 1_000_000),
        until);
  }

  private static double nearest(WorldDrive drive, Advisory advisory) {
    int horizon = SLOW.contains(advisory.channel()) ? 600 : 180;
    double[] celsius = drive.celsius().get(advisory.channel());
    double nearest = Double.POSITIVE_INFINITY;
    for (int second = advisory.from();
        second <= Math.min(drive.seconds(), advisory.from() + horizon);
        second++) {
      nearest = Math.min(nearest, advisory.limit() - celsius[second]);
    }
    return nearest;
  }

  int derates() {
    return derates;
  }

  int warned() {
    return leads.size();
  }

  double falsePerHour() {
    return lies.size() / hours;
  }

  /** A quantile of the leads, s; 0 without any. */
  double lead(double level) {
    Collections.sort(leads);
    return leads.isEmpty() ? 0 : leads.get((int) (level * (leads.size() - 1)));
  }

  List<String> misses() {
    return misses;
  }

  List<String> lies() {
    return lies;
  }

  @Override
  public String toString() {
    return "%.1f h, warned %d of %d, lead p10 %.0f s, median %.0f s, %d advisories, false %.2f an hour"
        .formatted(
            hours, warned(), derates, lead(0.1), lead(0.5), advisories, falsePerHour());
  }
}
