package steadypull.demo.season;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.stream.Stream;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.WarmStart;

/**
 * One line of the calendar. Immutable.
 *
 * @param start by the town's clock
 * @param tows whether the trailer is on
 * @param parkedHours since the engine was last switched off
 * @param outing words for {@link OutingText}
 * @param kilometresPerHour cruise on the road, 0 on the dynamometer
 * @param celsius outside air in the town
 * @param headwindMetresPerSecond leaving the town
 * @param sky in words
 * @param label in the user's words; may be empty
 * @param note in the user's words; may be empty
 * @param incidents what happens on the way
 */
record CalendarRow(
    LocalDateTime start,
    FleetVehicle vehicle,
    boolean tows,
    Fitting fitting,
    double parkedHours,
    String outing,
    double kilometresPerHour,
    double celsius,
    double headwindMetresPerSecond,
    String sky,
    String label,
    List<String> tags,
    String note,
    List<Incident> incidents) {
  private static final double COOLER_ON_ABOVE = 17; // degC, air conditioning

  /** Columns of {@link SeasonCalendar}, apart by a bar. */
  static CalendarRow parse(String line) {
    List<String> cells = Stream.of(line.split("\\|", -1)).map(String::strip).toList();
    String[] when = cells.get(0).split(" ", -1);
    return new CalendarRow(
        LocalDateTime.of(LocalDate.parse("2026-" + when[0]), LocalTime.parse(when[1])),
        Fleet.of(cells.get(1)),
        cells.get(2).equals("trailer"),
        Fitting.valueOf(cells.get(3)),
        Double.parseDouble(cells.get(4)),
        cells.get(5),
        Double.parseDouble(cells.get(6)),
        Double.parseDouble(cells.get(7)),
        Double.parseDouble(cells.get(8)),
        cells.get(9),
        cells.get(10),
        words(cells.get(11)),
        cells.get(12),
        words(cells.get(13)).stream().map(Incident::parse).toList());
  }

  private static List<String> words(String cell) {
    return Stream.of(cell.split(", ?", -1)).filter(word -> !word.isEmpty()).toList();
  }

  /** The vehicle as it is that day. */
  Rig rig() {
    return vehicle.onADay(
        tows, fitting, Dust.closedShare(start.toLocalDate()), celsius > COOLER_ON_ABOVE);
  }

  WarmStart warmStart() {
    return Parked.after(parkedHours, celsius);
  }
}
