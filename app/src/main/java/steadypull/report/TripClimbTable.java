package steadypull.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.review.ClimbReview;
import steadypull.road.climb.Climb;

/** The climbs of a trip, and what each left to the limits. */
final class TripClimbTable {
  private static final List<String> NUMBERS =
      List.of(
          "climb.from",
          "climb.length",
          "climb.rise",
          "climb.grade",
          "climb.speed",
          "climb.room",
          "climb.derated");

  private TripClimbTable() {}

  /** The table; empty if there is no climb. */
  static Markup of(ReportWords words, FigureText figures, List<ClimbReview> climbs) {
    Markup table = new Markup();
    if (climbs.isEmpty()) {
      return table;
    }
    table.with("h2", words.say("climb.title"));
    table.open("table", "class", "runs").open("thead").open("tr");
    table.with("th", words.say("climb.name"));
    NUMBERS.forEach(key -> table.with("th", words.say(key), "class", "number"));
    table.close().close().open("tbody");
    climbs.forEach(climb -> row(table, words, figures, climb));
    return table.close().close();
  }

  private static void row(Markup table, ReportWords words, FigureText figures, ClimbReview review) {
    QuantityFormat quantities = figures.quantities();
    Climb climb = review.climb();
    table.open("tr").with("td", review.name());
    number(table, quantities.elapsed((long) climb.startSeconds()));
    number(table, quantities.distance(climb.lengthMetres()));
    number(table, quantities.rise(climb.riseMetres()));
    number(table, quantities.gradeDigits(climb.meanGrade() * 100) + " %");
    number(table, quantities.speed(climb.meanKilometresPerHour()));
    number(table, room(words, figures, review));
    number(
        table,
        figures.number(
            review.deratedSeconds(),
            seconds -> words.say("figure.seconds", quantities.whole(seconds))));
    table.close();
  }

  private static String room(ReportWords words, FigureText figures, ClimbReview review) {
    return review.leastHeadroomKelvin().entrySet().stream()
        .min(Comparator.comparingDouble(Map.Entry::getValue))
        .map(least -> room(words, figures, least.getKey(), least.getValue()))
        .orElse(FigureText.UNKNOWN);
  }

  private static String room(
      ReportWords words, FigureText figures, Channel channel, double kelvin) {
    String room = figures.quantities().temperatureDifference(Math.abs(kelvin));
    return words.title(channel)
        + " "
        + words.say(kelvin < 0 ? "trip.isOver" : "trip.isUnder", room);
  }

  private static void number(Markup row, String text) {
    row.with("td", text, "class", "number");
  }
}
