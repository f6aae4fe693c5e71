package steadypull.demo.season;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;

/**
 * One trip of the season. Immutable; may be driven as often as wanted and tells the same each time.
 * Safe from any thread, and trips may be driven at the same time.
 */
public final class SeasonTrip {
  private static final List<String> LOCATED =
      List.of("latitude[deg]", "longitude[deg]", "altitude[m]");

  private final CalendarRow row;
  private final long seed;

  SeasonTrip(CalendarRow row, long seed) {
    this.row = row;
    this.seed = seed;
  }

  /** What the workshop calls the vehicle. */
  public String vehicleName() {
    return row.vehicle().name();
  }

  /** The vehicle with its usual trailer, as the text of a vehicle file. */
  public String vehicleFile() {
    return VehicleText.vehicle(row.vehicle());
  }

  /** What the vehicle moves on this trip, as the text of a rig file. */
  public String rigFile() {
    return VehicleText.rig(row.rig(), row.vehicle().soloKilograms());
  }

  /** When the first answer arrives. */
  public Instant start() {
    return row.start().toInstant(offset());
  }

  /** What the town's clock is ahead of universal time. */
  public ZoneOffset offset() {
    return TownClock.offset(row.start());
  }

  /** The user's words for the run: {@code baseline}, {@code after} or empty. */
  public String label() {
    return row.label();
  }

  /** What the user noted; may be empty. */
  public String note() {
    return row.note();
  }

  /** Lower-case words, each once. */
  public List<String> tags() {
    return row.tags();
  }

  /** What has been changed on the vehicle and what it tows, for people; may be empty. */
  public String fitted() {
    String trailer = row.tows() ? row.vehicle().trailer() : "";
    return String.join(
        "; ", Stream.of(trailer, row.fitting().words()).filter(words -> !words.isEmpty()).toList());
  }

  /** The day in words. */
  public String outside() {
    return row.sky();
  }

  /** What a thermometer in the town or in the workshop says, degC. */
  public OptionalDouble outsideCelsius() {
    return OptionalDouble.of(row.celsius());
  }

  /** What the vehicle's diagnostic port speaks. */
  public String protocol() {
    return row.vehicle().bus().protocol();
  }

  /** Headers of the channels that the trip may bring, in the order in which they are asked for. */
  public List<String> channelHeaders() {
    Stream<String> polled = row.vehicle().bus().channelHeaders(row.rig().cooling());
    Stream<String> located = row.vehicle().hasReceiver() ? LOCATED.stream() : Stream.empty();
    return Stream.concat(polled, located).toList();
  }

  /**
   * Drives the trip on the calling thread. Takes a fraction of a second and constant memory.
   *
   * @param sink is told everything in the order of time
   * @return the end of the trip, microseconds since its start
   */
  public long drive(SeasonSink sink) {
    Random random = new Random(seed);
    Outing outing = new OutingText(row, random).parse();
    SeasonDrive drive = new SeasonDrive(row.rig(), outing, row.warmStart(), random.nextLong());
    return new TripTelling(row, drive, random, sink).tell();
  }

  @Override
  public String toString() {
    return row.start() + " " + vehicleName() + " " + row.outing();
  }
}
