package steadypull;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.advice.RuleSet;

/**
 * How much the rules say, by the figures of ANSI/ISA-18.2-2016 and EEMUA 191 (from memory). What
 * counts is what asks for an answer: cautions and warnings that are raised, become worse or come
 * back from the shelf. A notice asks for none and is counted apart.
 */
final class AlarmLoad {
  private static final double TEN_MINUTES = 600;
  private static final double HOUR = 3600;
  private static final int FLOOD = 10;
  private static final int CHATTER_COUNT = 3;
  private static final double CHATTER_SECONDS = 60;

  private final RuleSet rules;
  private final Map<Level, Integer> ofLevel = new TreeMap<>();
  private final Map<String, Integer> ofRule = new TreeMap<>();
  private final List<String> chattering = new ArrayList<>();
  private double seconds;
  private int periods;
  private int floods;
  private int worstHour;
  private int worstTenMinutes;
  private int worstNotTowing;
  private double longestStanding;

  AlarmLoad(RuleSet rules) {
    this.rules = rules;
  }

  /** Takes a trip; each by itself, as no driver drives two. */
  void add(String name, boolean isTowing, List<AdviceEvent> told, double lasted) {
    List<Double> alarms = told.stream().filter(AlarmLoad::isAlarm).map(AlarmLoad::at).toList();
    seconds += lasted;
    worstHour = Math.max(worstHour, most(alarms, HOUR));
    worstTenMinutes = Math.max(worstTenMinutes, most(alarms, TEN_MINUTES));
    if (!isTowing) {
      worstNotTowing = Math.max(worstNotTowing, alarms.size());
    }
    for (double from = 0; from < lasted; from += TEN_MINUTES) {
      double begin = from;
      long count = alarms.stream().filter(at -> at >= begin && at < begin + TEN_MINUTES).count();
      periods++;
      floods += count >= FLOOD ? 1 : 0;
    }
    told.forEach(this::count);
    lives(name, told, lasted);
  }

  private void count(AdviceEvent event) {
    boolean isAnnounced =
        event.kind() == AdviceEvent.Kind.RAISED || event.kind() == AdviceEvent.Kind.ESCALATED;
    if (isAnnounced && event.level().isPresent() && event.rule().isPresent()) {
      ofLevel.merge(event.level().get(), 1, Integer::sum);
      ofRule.merge(event.rule().get(), 1, Integer::sum);
    }
  }

  private void lives(String name, List<AdviceEvent> told, double lasted) {
    Map<String, Double> standing = new HashMap<>();
    Map<String, List<Double>> raised = new HashMap<>();
    for (AdviceEvent event : told) {
      String cause = event.rule().flatMap(rules::cause).orElse("");
      if (event.kind() == AdviceEvent.Kind.RAISED) {
        standing.put(cause, at(event));
        List<Double> times = raised.computeIfAbsent(cause, _ -> new ArrayList<>());
        times.add(at(event));
        if (most(times, CHATTER_SECONDS) >= CHATTER_COUNT) {
          chattering.add(name + " " + cause + " " + at(event));
        }
      } else if (event.kind() == AdviceEvent.Kind.CLEARED && standing.containsKey(cause)) {
        longestStanding = Math.max(longestStanding, at(event) - standing.remove(cause));
      }
    }
    standing.values().forEach(since -> longestStanding = Math.max(longestStanding, lasted - since));
  }

  static boolean isAlarm(AdviceEvent event) {
    return switch (event.kind()) {
      case RAISED, ESCALATED, UNSHELVED ->
          event.level().filter(level -> level != Level.NOTICE).isPresent();
      case EASED,
          CLEARED,
          ACKNOWLEDGED,
          SHELVED,
          JOINED,
          SUPPRESSED,
          ADVICE_HELD,
          ADVICE_FAILED,
          ADVICE_NOT_FOLLOWED,
          OUT_OF_SERVICE,
          DERATE_BEGAN,
          DERATE_ENDED,
          POWER_LIMITED ->
          false;
    };
  }

  private static double at(AdviceEvent event) {
    return event.timeMicros() / 1e6;
  }

  /** The most that lie within any span of so many seconds. */
  private static int most(List<Double> times, double span) {
    int most = 0;
    for (int first = 0; first < times.size(); first++) {
      int last = first;
      while (last < times.size() && times.get(last) - times.get(first) < span) {
        last++;
      }
      most = Math.max(most, last - first);
    }
    return most;
  }

  int worstHour() {
    return worstHour;
  }

  int worstNotTowing() {
    return worstNotTowing;
  }

  double floodShare() {
    return periods == 0 ? 0 : (double) floods / periods;
  }

  List<String> chattering() {
    return List.copyOf(chattering);
  }

  double longestStandingSeconds() {
    return longestStanding;
  }

  /** Which share of what was announced had that level. */
  double shareOf(Level level) {
    return announced() == 0 ? 0 : (double) ofLevel.getOrDefault(level, 0) / announced();
  }

  int announced() {
    return ofLevel.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** The table of the guide for contributors. */
  String table() {
    StringBuilder text = new StringBuilder();
    text.append(String.format(Locale.ROOT, "hours %.1f%n", seconds / HOUR));
    text.append(
        String.format("worst hour %d alarms, worst 10 min %d%n", worstHour, worstTenMinutes));
    text.append(String.format("worst trip not towing %d%n", worstNotTowing));
    text.append(String.format(Locale.ROOT, "flood %.4f of %d periods%n", floodShare(), periods));
    text.append(String.format(Locale.ROOT, "longest standing %.0f s%n", longestStanding));
    text.append(String.format("chattering %s%n", chattering));
    text.append(String.format("of levels %s%nof rules %s%n", ofLevel, ofRule));
    return text.toString();
  }
}
