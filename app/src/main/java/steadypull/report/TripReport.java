package steadypull.report;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import steadypull.channel.QuantityFormat;
import steadypull.drive.TripPicture;
import steadypull.drive.WholeTrip;
import steadypull.review.ClimbReview;
import steadypull.store.TripDetails;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;

/**
 * The form of one trip: what came nearest to its limit, the temperatures over the whole trip, its
 * climbs, and what was said of it. One use.
 */
public final class TripReport {
  /** How many columns wide its picture is to be drawn. */
  public static final int COLUMNS = TripLanes.COLUMNS;

  private static final double MICROS_PER_SECOND = 1e6;
  private static final int MOST_MARKS = 12;

  private final WholeTrip trip;
  private final TripPicture picture;
  private final List<ClimbReview> climbs;
  private final ReportWords words;
  private final FigureText figures;

  private TripReport(
      WholeTrip trip,
      TripPicture picture,
      List<ClimbReview> climbs,
      ReportWords words,
      FigureText figures) {
    this.trip = trip;
    this.picture = picture;
    this.climbs = climbs;
    this.words = words;
    this.figures = figures;
  }

  /**
   * The page.
   *
   * @param picture of the whole trip, {@link #COLUMNS} wide
   */
  public static ReportPage of(
      WholeTrip trip,
      TripPicture picture,
      List<ClimbReview> climbs,
      Letterhead head,
      Locale locale,
      QuantityFormat quantities) {
    ReportWords words = new ReportWords(locale);
    FigureText figures = new FigureText(words, quantities);
    return new TripReport(trip, picture, climbs, words, figures).page(head);
  }

  private ReportPage page(Letterhead head) {
    TripSummary summary = trip.summary();
    String title = words.say("trip.title", summary.vehicleName(), moment(summary));
    Markup body = new Markup();
    body.add(LetterheadForm.of(head, words)).with("h1", title);
    body.with("p", words.say("trip.id", summary.id()), "class", "soft");
    TripPeaks.sentence(words, figures, picture)
        .ifPresent(
            said -> body.open("div", "class", "verdict").with("p", said, "class", "claim").close());
    body.add(facts());
    if (picture.lines().isEmpty()) {
      body.with("p", words.say("trip.noLimits"));
    } else {
      body.with("h2", words.say("trip.temperatures"));
      body.add(TripLanes.of(words, figures, picture));
      body.with("p", words.say("trip.lanes"), "class", "soft");
      body.add(TripPeaks.table(words, figures, picture, trip.vehicle()));
    }
    body.add(TripClimbTable.of(words, figures, climbs));
    body.add(marks());
    body.with("h2", words.say("report.cautions")).open("ul");
    body.with("li", words.say("report.caution.1")).with("li", words.say("report.caution.2"));
    body.close();
    body.with(
        "div", words.say("report.made", head.made().day(), head.made().version()), "class", "foot");
    return ReportPage.of(words, head, title, words.say("trip.subject"), body);
  }

  private String moment(TripSummary summary) {
    LocalDateTime start =
        LocalDateTime.ofInstant(summary.start(), summary.offset().orElse(ZoneOffset.UTC));
    return DateTimeFormatter.ofPattern(words.say("day.pattern") + ", HH:mm", words.locale())
        .format(start);
  }

  private Markup facts() {
    TripSummary summary = trip.summary();
    TripDetails details = summary.details();
    QuantityFormat quantities = figures.quantities();
    FactTable facts = new FactTable();
    fact(facts, "trip.length", quantities.elapsed((long) summary.durationSeconds()));
    fact(facts, "trip.distance", text(summary.distanceMetres(), quantities::distance));
    fact(facts, "trip.mass", text(trip.rig().massKilograms(), quantities::mass));
    fact(facts, "trip.label", details.label());
    fact(facts, "trip.fitted", details.fitted());
    fact(facts, "trip.outside", details.outside());
    fact(facts, "trip.outsideTemp", text(details.outsideCelsius(), quantities::outsideTemperature));
    fact(facts, "trip.tags", String.join(", ", details.tags()));
    fact(facts, "trip.note", details.note());
    fact(
        facts,
        "trip.gaps",
        summary.gaps().isEmpty() ? "" : Integer.toString(summary.gaps().size()));
    fact(
        facts,
        "trip.damaged",
        picture.damaged().isEmpty() ? "" : Integer.toString(picture.damaged().size()));
    return facts.markup();
  }

  private void fact(FactTable facts, String key, String text) {
    facts.add(words.say(key), text);
  }

  private static String text(OptionalDouble value, java.util.function.DoubleFunction<String> text) {
    return value.isPresent() ? Objects.requireNonNull(text.apply(value.getAsDouble())) : "";
  }

  private Markup marks() {
    Markup marks = new Markup();
    List<TripEvent> all = trip.marks();
    if (all.isEmpty()) {
      return marks;
    }
    marks.with("h2", words.say("trip.marks")).open("ul");
    for (TripEvent mark : all.subList(0, Math.min(MOST_MARKS, all.size()))) {
      String at = figures.quantities().elapsed((long) (mark.timeMicros() / MICROS_PER_SECOND));
      marks.with("li", (at + "  " + mark.detail()).strip());
    }
    if (all.size() > MOST_MARKS) {
      marks.with("li", words.say("trip.moreMarks", Integer.toString(all.size() - MOST_MARKS)));
    }
    return marks.close();
  }
}
