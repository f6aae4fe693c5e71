package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.review.ClimbReview;
import steadypull.review.TripClimbs.RoadKnowledge;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.KnownClimb;
import steadypull.thermal.Sustainable;

/** Climbs for people: two lines or three for each. */
final class ClimbText {
  private static final double KILOMETRE = 1000;
  private static final double MILE = 1609.344;
  private static final int LINE = 80;
  private static final String INDENT = "    ";

  private final QuantityFormat format;
  private final StringBuilder text = new StringBuilder();

  private ClimbText(QuantityFormat format) {
    this.format = format;
  }

  static String of(List<ClimbReview> reviews, QuantityFormat format) {
    ClimbText told = new ClimbText(format);
    if (!reviews.isEmpty()) {
      told.line("climb", "from", "for", "length", "rise", "mean", "steepest", "speed");
    }
    reviews.forEach(told::describe);
    return told.text.toString();
  }

  /** What was no climb though it pulled like one. */
  static String leftOut(int stretches) {
    return "Left out "
        + Counted.stretches(stretches)
        + " that pulled like a climb while the vehicle or the air pressure stayed: a dynamometer,"
        + " or a rig that is heavier than entered.";
  }

  /** What may be no climb, and what would tell. */
  static String undecided(int climbs) {
    return (climbs == 1 ? "One climb" : climbs + " climbs")
        + " may have been a dynamometer's load: no receiver told a place, and the air pressure, in"
        + " whole kilopascals, tells the two apart from some 140 m of rise on. A receiver on board"
        + " (record --receiver) would tell.";
  }

  /** Why a trip has no climb, in a sentence. */
  static String whyNone(String tripId, RoadKnowledge road) {
    return switch (road) {
      case GRADES -> "No climb in trip " + tripId + ": none rises 40 m over 500 m at 2 %.";
      case DISTANCE ->
          "No climb can be told in trip "
              + tripId
              + ": it has neither a receiver's altitude nor torque and mass for the grade."
              + " \"steadypull trip TRIP --mass KG\" tells the mass afterwards.";
      case NOTHING ->
          "No climb can be told in trip "
              + tripId
              + ": expected the channel vehicle_speed, found none.";
    };
  }

  private void describe(ClimbReview review) {
    Climb climb = review.climb();
    line(
        name(review),
        format.elapsed((long) climb.startSeconds()),
        format.elapsed((long) climb.seconds()),
        format.distance(climb.lengthMetres()),
        format.rise(climb.riseMetres()),
        format.gradeDigits(climb.meanGrade() * 100) + " %",
        format.gradeDigits(climb.steepestGrade() * 100) + " %",
        format.speed(climb.meanKilometresPerHour()));
    wrapped(Stream.of(List.of(which(review)), work(review), ends(climb)).flatMap(List::stream));
    wrapped(
        review.peaksCelsius().entrySet().stream()
            .map(peak -> peak(peak, review.leastHeadroomKelvin())));
  }

  private void line(String name, String... cells) {
    text.append(
            String.format(
                    Locale.ROOT,
                    "%-17s%8s%9s%9s%9s%8s%10s%10s",
                    name,
                    cells[0],
                    cells[1],
                    cells[2],
                    cells[3],
                    cells[4],
                    cells[5],
                    cells[6])
                .stripTrailing())
        .append('\n');
  }

  private String name(ClimbReview review) {
    boolean isMetric = format.system() == UnitSystem.METRIC;
    double unit = isMetric ? KILOMETRE : MILE;
    return "climb %d, %s %.0f"
        .formatted(
            review.number(),
            isMetric ? "km" : "mi",
            Math.floor(review.climb().startMetres() / unit));
  }

  private String which(ClimbReview review) {
    return switch (review.identity()) {
      case ClimbIdentity.Known(KnownClimb climb) -> called(climb);
      case ClimbIdentity.New(KnownClimb climb) -> called(climb);
      case ClimbIdentity.Part(KnownClimb climb, double from, double to) ->
          "part of "
              + called(climb)
              + ", from "
              + format.distance(from)
              + " to "
              + format.distance(to);
      case ClimbIdentity.Fragment() -> "part of an unknown climb";
      case ClimbIdentity.Unplaced() -> "no place known";
    };
  }

  private static String called(KnownClimb climb) {
    return climb.name().isEmpty()
        ? "id " + climb.id()
        : Printable.line(climb.name()) + ", id " + climb.id();
  }

  private List<String> work(ClimbReview review) {
    List<String> told = new ArrayList<>();
    OptionalDouble energy = review.wheelKilowattHours();
    if (energy.isPresent()) {
      told.add(String.format(Locale.ROOT, "%.1f kWh at the wheels", energy.getAsDouble()));
    }
    OptionalDouble derated = review.deratedSeconds();
    if (derated.isPresent() && derated.getAsDouble() > 0) {
      told.add("power cut for " + format.elapsed((long) derated.getAsDouble()));
    }
    review.sustainableKilowatts().ifPresent(found -> told.addAll(holds(found)));
    return told;
  }

  private static List<String> holds(Sustainable found) {
    return switch (found) {
      case Sustainable.UpTo upTo ->
          List.of(
              String.format(
                  Locale.ROOT,
                  "holds %.0f kW at the wheels for good (%.0f to %.0f)",
                  upTo.p50(),
                  upTo.p10(),
                  upTo.p90()),
              "then " + upTo.channel().id() + " is at its limit");
      case Sustainable.AtLeast atLeast ->
          List.of(
              String.format(Locale.ROOT, "holds %.0f kW at the wheels and more", atLeast.value()));
      case Sustainable.Nothing() -> List.of("holds no power for good in this heat");
    };
  }

  private List<String> ends(Climb climb) {
    List<String> told = new ArrayList<>();
    if (climb.begun() == Climb.End.RECORD) {
      told.add("the record begins on it");
    }
    if (climb.begun() == Climb.End.TURN || climb.ended() == Climb.End.TURN) {
      told.add("turned around on it");
    }
    if (climb.ended() == Climb.End.RECORD) {
      told.add("the record ends on it");
    }
    if (climb.gapSeconds() > 0) {
      told.add("nothing told for " + format.elapsed((long) climb.gapSeconds()));
    }
    return told;
  }

  private String peak(Map.Entry<Channel, Double> peak, Map<Channel, Double> headroom) {
    String hottest = peak.getKey().id() + " " + format.temperature(peak.getValue());
    Double left = headroom.get(peak.getKey());
    if (left == null) {
      return hottest;
    }
    String distance = format.temperatureDifference(Math.abs(left));
    return hottest + " (" + distance + (left < 0 ? " over" : " under") + " the limit)";
  }

  /** Words that belong together stay on a line. */
  private void wrapped(Stream<String> parts) {
    StringBuilder line = new StringBuilder();
    for (String part : parts.toList()) {
      if (!line.isEmpty() && line.length() + part.length() + 2 > LINE - INDENT.length()) {
        text.append(INDENT).append(line).append(",\n");
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : ", ").append(part);
    }
    if (!line.isEmpty()) {
      text.append(INDENT).append(line).append('\n');
    }
  }
}
