package steadypull.store;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jdbi.v3.core.JdbiException;
import steadypull.channel.Channel;
import steadypull.road.climb.ClimbLine;
import steadypull.road.climb.ClimbLineBytes;
import steadypull.road.climb.KnownClimb;
import steadypull.store.column.DamagedSegmentException;
import steadypull.store.column.Segment;
import steadypull.store.page.FoundRow;

/**
 * Tells the rows of a library by their form, which differs from table to table. What was
 * overwritten hardly ever has one of these forms; a segment is believed only if its check holds.
 */
final class LibraryRows {
  static final RowForm TRIP = new RowForm("ntttiiotttttrtttttiiirttii");
  static final RowForm TRIP_TWIN = new RowForm(TRIP.letters() + "i");
  static final RowForm SEGMENT = new RowForm("niiiiib");
  static final RowForm EVENT = new RowForm("niiiitt");
  static final RowForm CHANNEL = new RowForm("ntt");
  static final RowForm TRIP_VEHICLE = new RowForm("nt");
  static final RowForm VEHICLE = new RowForm("ttit");
  static final RowForm ROUTE = new RowForm("nttt");
  static final RowForm TABLE_MAPPING = new RowForm("tt");
  static final RowForm ROAD_TILE = new RowForm("nb");
  static final RowForm ROAD_LEARNED = new RowForm("nti");
  static final RowForm ROAD_QUIET = new RowForm("nrrr");
  static final RowForm CLIMB = new RowForm("nttbrr");

  static final RowForm CONFIGURATION = new RowForm("nttitt");
  static final RowForm TRIP_HEAT = new RowForm("nttit");
  static final RowForm COMPARISON = new RowForm("ntittt");

  private static final RowForm TRIP_ID_INDEX = new RowForm("ti");
  private static final RowForm CHANNEL_INDEX = new RowForm("tti");
  private static final Pattern TRIP_ID = Pattern.compile("\\d{8}T\\d{6}Z-[a-z0-9]{4}");

  private LibraryRows() {}

  /** What the row says, or empty if it is no row of a library that is of use. */
  static Optional<LibraryRow> recognise(FoundRow row) {
    try {
      return row.isOfTable() ? ofTable(row) : ofIndex(row);
    } catch (IllegalArgumentException | JdbiException e) {
      // It has the form, and says what no library says: so it is none of its rows.
      return Optional.empty();
    }
  }

  private static Optional<LibraryRow> ofIndex(FoundRow row) {
    return TRIP_ID_INDEX
        .read(row)
        .flatMap(it -> tripId(it.text(), it.whole()))
        .or(() -> CHANNEL_INDEX.read(row).flatMap(it -> channel(it.text(), it.text(), it.whole())));
  }

  private static Optional<LibraryRow> tripId(String id, long tripKey) {
    return TRIP_ID.matcher(id).matches()
        ? Optional.of(new LibraryRow.OfTripId(tripKey, id))
        : Optional.empty();
  }

  private static Optional<LibraryRow> channel(String id, String unit, long key) {
    return Optional.of(new LibraryRow.OfChannel(key, new Channel(id, unit)));
  }

  private static Optional<LibraryRow> ofTable(FoundRow row) {
    return TRIP.read(row)
        .<LibraryRow>map(it -> trip(row.key(), it.skip()))
        .or(
            () ->
                TRIP_TWIN
                    .read(row)
                    .map(it -> new LibraryRow.OfTripTwin(trip(row.key(), it.skip()))))
        .or(() -> SEGMENT.read(row).map(it -> segment(row.place(), it.skip())))
        .or(() -> EVENT.read(row).flatMap(it -> event(it.skip())))
        .or(() -> CHANNEL.read(row).flatMap(it -> channel(it.skip().text(), it.text(), row.key())))
        .or(
            () ->
                TRIP_VEHICLE
                    .read(row)
                    .map(it -> new LibraryRow.OfTripVehicle(row.key(), it.skip().text())))
        .or(
            () ->
                VEHICLE
                    .read(row)
                    .map(
                        it ->
                            new LibraryRow.OfVehicle(it.text(), it.text(), it.whole(), it.text())))
        .or(
            () ->
                ROUTE
                    .read(row)
                    .map(it -> new LibraryRow.OfRoute(it.skip().text(), it.text(), it.text())))
        .or(() -> TABLE_MAPPING.read(row).map(it -> new LibraryRow.OfMapping(it.text(), it.text())))
        .or(() -> ofRoads(row));
  }

  /** What the library knows of roads, of vehicles' heat and of comparisons. */
  private static Optional<LibraryRow> ofRoads(FoundRow row) {
    return ROAD_TILE
        .read(row)
        .flatMap(it -> it.skip().bytes())
        .filter(tile -> RoadTiles.isWhole(row.key(), tile))
        .<LibraryRow>map(tile -> new LibraryRow.OfRoadTile(row.key(), tile))
        .or(
            () ->
                ROAD_LEARNED
                    .read(row)
                    .map(it -> new LibraryRow.OfRoadLearned(it.skip().text(), it.whole())))
        .or(() -> ROAD_QUIET.read(row).map(it -> quiet(row.key(), it.skip())))
        .or(() -> CLIMB.read(row).flatMap(it -> climb(it.skip())))
        .or(() -> CONFIGURATION.read(row).flatMap(it -> configuration(it.skip())))
        .or(() -> TRIP_HEAT.read(row).map(it -> tripHeat(it.skip())))
        .or(() -> COMPARISON.read(row).map(it -> comparison(it.skip())));
  }

  private static Optional<LibraryRow> configuration(RowForm.Columns row) {
    String vehicleName = row.text();
    return HeatRows.configuration(row.text(), row.whole(), row.text(), row.text())
        .map(it -> new LibraryRow.OfConfiguration(vehicleName, it));
  }

  private static LibraryRow comparison(RowForm.Columns row) {
    return new LibraryRow.OfComparison(
        ComparisonRows.comparison(row.text(), row.whole(), row.text(), row.text(), row.text()));
  }

  private static LibraryRow tripHeat(RowForm.Columns row) {
    return new LibraryRow.OfTripHeat(
        row.text(), row.text(), HeatRows.instant(row.whole()), row.text());
  }

  private static LibraryRow quiet(long key, RowForm.Columns row) {
    return new LibraryRow.OfRoadQuiet(
        key,
        new QuietPlace(
            row.real().orElse(Double.NaN),
            row.real().orElse(Double.NaN),
            row.real().orElse(Double.NaN)));
  }

  private static Optional<LibraryRow> climb(RowForm.Columns row) {
    String id = row.text();
    String name = row.text();
    Optional<ClimbLine> line = row.bytes().map(ClimbLineBytes::decode);
    double metres = row.real().orElse(Double.NaN);
    double rise = row.real().orElse(Double.NaN);
    return line.map(it -> new LibraryRow.OfClimb(new KnownClimb(id, name, it, metres, rise)));
  }

  private static LibraryRow.OfTrip trip(long key, RowForm.Columns row) {
    String id = row.text();
    String origin = row.text();
    String vehicleName = row.text();
    long vehicleKey = row.whole();
    long start = row.whole();
    Optional<Integer> offset = row.optionalWhole();
    TripDetails details =
        new TripDetails(
            row.text(), row.text(), lines(row.text()), row.text(), row.text(), row.real());
    String source = row.text();
    LinkIdentity link = new LinkIdentity(row.text(), row.text(), row.text());
    String version = row.text();
    long reached = row.whole();
    long samples = row.skip().whole();
    List<Long> channels = RowText.keys(row.skip().text());
    boolean isSealed = row.skip().whole() == 1;
    return new LibraryRow.OfTrip(
        key,
        id,
        origin,
        vehicleName,
        vehicleKey,
        start,
        offset,
        details,
        source,
        link,
        version,
        reached,
        samples,
        channels,
        isSealed,
        row.whole() != 0);
  }

  private static List<String> lines(String tags) {
    return tags.isEmpty() ? List.of() : tags.lines().toList();
  }

  private static LibraryRow segment(FoundRow.Place place, RowForm.Columns row) {
    long tripKey = row.whole();
    long firstSample = row.whole();
    long count = row.whole();
    long first = row.whole();
    long last = row.whole();
    boolean isWhole =
        row.bytes().flatMap(LibraryRows::segment).stream()
            .anyMatch(
                it -> it.size() == count && it.firstMicros() == first && it.lastMicros() == last);
    return new LibraryRow.OfSegment(place, tripKey, firstSample, count, first, last, isWhole);
  }

  /** What can be read of the samples of a segment's row, or empty if nothing can. */
  static Optional<Segment> samples(FoundRow row) {
    return SEGMENT
        .read(row)
        .flatMap(it -> it.skip().skip().skip().skip().skip().skip().bytes())
        .flatMap(LibraryRows::segment);
  }

  private static Optional<Segment> segment(byte[] bytes) {
    try {
      return Optional.of(Segment.decodeReadable(bytes));
    } catch (DamagedSegmentException e) {
      // Told as lost by whoever finds it missing.
      return Optional.empty();
    }
  }

  private static Optional<LibraryRow> event(RowForm.Columns row) {
    long tripKey = row.whole();
    long sequence = row.whole();
    long afterSamples = row.whole();
    long timeMicros = row.whole();
    Optional<TripEvent.Kind> kind = TripEvent.Kind.of(row.text());
    String detail = row.text();
    return kind.map(
        it ->
            new LibraryRow.OfEvent(
                tripKey, sequence, afterSamples, new TripEvent(timeMicros, it, detail)));
  }
}
