package steadypull.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import steadypull.drive.TripPicture;
import steadypull.store.column.PixelLine;
import steadypull.vehicle.Vehicle;

/** The hottest of each limited channel beside its limit. */
final class TripPeaks {
  private TripPeaks() {}

  /** The channels, the one that came nearest to its limit first. */
  static List<TripPicture.Line> nearestFirst(TripPicture picture) {
    return picture.lines().stream()
        .sorted(Comparator.comparingDouble(TripPicture.Line::leastHeadroomKelvin))
        .toList();
  }

  /** What ran out first, or came nearest, in a sentence. */
  static Optional<String> sentence(ReportWords words, FigureText figures, TripPicture picture) {
    return picture
        .nearest()
        .map(
            line -> {
              double under = line.leastHeadroomKelvin();
              return words.say(
                  under < 0 ? "trip.over" : "trip.nearest",
                  words.name(line.channel()),
                  figures.quantities().temperatureDifference(Math.abs(under)),
                  figures.quantities().temperature(line.limitCelsius()),
                  words.title(line.channel()));
            });
  }

  static Markup table(ReportWords words, FigureText figures, TripPicture picture, Vehicle vehicle) {
    Markup table = new Markup().open("table").open("thead").open("tr");
    table.with("th", words.say("trip.channel"));
    for (String key : List.of("trip.hottest", "trip.limit", "trip.room")) {
      table.with("th", words.say(key), "class", "number");
    }
    table.with("th", words.say("trip.source")).close().close().open("tbody");
    for (TripPicture.Line line : nearestFirst(picture)) {
      table
          .open("tr")
          .with("td", words.title(line.channel()))
          .with("td", figures.quantities().temperature(hottest(line.line())), "class", "number")
          .with("td", figures.quantities().temperature(line.limitCelsius()), "class", "number")
          .with("td", room(words, figures, line.leastHeadroomKelvin()), "class", "number strong")
          .with("td", source(words, vehicle, line))
          .close();
    }
    return table.close().close();
  }

  private static String room(ReportWords words, FigureText figures, double kelvin) {
    String room = figures.quantities().temperatureDifference(Math.abs(kelvin));
    return words.say(kelvin < 0 ? "trip.isOver" : "trip.isUnder", room);
  }

  private static String source(ReportWords words, Vehicle vehicle, TripPicture.Line line) {
    return vehicle
        .limit(line.channel())
        .map(limit -> words.say("provenance." + limit.provenance().kind().name()))
        .orElse("");
  }

  private static double hottest(PixelLine line) {
    return IntStream.range(0, line.columns())
        .filter(column -> !line.isEmpty(column))
        .mapToDouble(line::greatest)
        .max()
        .orElse(0);
  }
}
