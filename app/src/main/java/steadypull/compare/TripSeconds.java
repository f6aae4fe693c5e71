package steadypull.compare;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.TripSamples;
import steadypull.store.LibraryException;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Vehicle;

/**
 * A trip, or a table, second by second from its start. Immutable; as large as its channels times
 * its seconds.
 */
public final class TripSeconds {
  private final String name;
  private final Optional<LocalDate> day;
  private final Vehicle vehicle;
  private final OptionalDouble noticedCelsius;
  private final List<String> calibrations;
  private final int seconds;
  private final Map<Channel, double[]> columns;
  private final PullPower power;

  private TripSeconds(Said said, int seconds, Map<Channel, double[]> columns, PullPower power) {
    this.name = said.name();
    this.day = said.day();
    this.vehicle = said.vehicle();
    this.noticedCelsius = said.noticedCelsius();
    this.calibrations = said.calibrations();
    this.seconds = seconds;
    this.columns = columns;
    this.power = power;
  }

  /** What is known of a trip besides its samples. */
  record Said(
      String name,
      Optional<LocalDate> day,
      Vehicle vehicle,
      OptionalDouble noticedCelsius,
      List<String> calibrations) {
    Said {
      calibrations = List.copyOf(calibrations);
      Objects.requireNonNull(name);
      Objects.requireNonNull(day);
      Objects.requireNonNull(vehicle);
      Objects.requireNonNull(noticedCelsius);
    }
  }

  /**
   * Reads a trip of a library; its day is that of its own clock, or of UTC where nobody knows.
   *
   * @param calibrations reads from the trip's events, in their order, the calibration ids of the
   *     engine's control unit as they are known from each on
   */
  public static TripSeconds ofTrip(
      TripLibrary library, TripSummary trip, Function<TripEvent, List<String>> calibrations)
      throws LibraryException {
    List<String> ids = List.of();
    for (TripEvent event : library.events(trip.id())) {
      ids = calibrations.apply(event);
    }
    LocalDate day = LocalDate.ofInstant(trip.start(), trip.offset().orElse(ZoneOffset.UTC));
    Said said =
        new Said(
            trip.id(),
            Optional.of(day),
            library.vehicleOf(trip.id()),
            trip.details().outsideCelsius(),
            ids);
    SecondsReading reading = new SecondsReading(said.vehicle(), brought(trip));
    TripSamples.held(library, trip).pourInto(reading::accept);
    return reading.finish(said);
  }

  /** What a live drive has computed is computed anew; a table's own is taken as measured. */
  private static List<Channel> brought(TripSummary trip) {
    boolean isLive = !trip.link().adapter().isEmpty();
    return trip.channels().stream()
        .filter(channel -> !isLive || !Channels.derived().contains(channel))
        .toList();
  }

  /** The same where nothing tells of calibrations. */
  public static TripSeconds ofTrip(TripLibrary library, TripSummary trip) throws LibraryException {
    return ofTrip(library, trip, _ -> List.of());
  }

  /**
   * Reads a table; a power at the wheels that it brings is taken as measured.
   *
   * @param name as it is to be called
   * @param vehicle to which it belongs
   * @param day on which it was written; empty: nobody said
   */
  public static TripSeconds ofTable(
      String name, IncomingTable table, Vehicle vehicle, Optional<LocalDate> day)
      throws TableException {
    SecondsReading reading = new SecondsReading(vehicle, table.channels());
    table.<RuntimeException>read(reading::accept, TransferWatch.NONE);
    return reading.finish(new Said(name, day, vehicle, OptionalDouble.empty(), List.of()));
  }

  static TripSeconds of(Said said, int seconds, Map<Channel, double[]> columns) {
    return new TripSeconds(
        said, seconds, new LinkedHashMap<>(columns), PullPower.of(columns, seconds));
  }

  /** The same trip with more columns, in place of those of the same channels. */
  TripSeconds with(Map<Channel, double[]> more) {
    Map<Channel, double[]> all = new TreeMap<>(columns);
    all.putAll(more);
    return new TripSeconds(
        new Said(name, day, vehicle, noticedCelsius, calibrations),
        seconds,
        all,
        PullPower.of(all, seconds));
  }

  /** The trip's id, or the file's name. */
  public String name() {
    return name;
  }

  /** The day on which it began; empty if a table does not say. */
  public Optional<LocalDate> day() {
    return day;
  }

  /** The vehicle as it was then. */
  public Vehicle vehicle() {
    return vehicle;
  }

  /** How many whole seconds it has, from 0 on. */
  public int seconds() {
    return seconds;
  }

  /** The channels of which there is a column. */
  public List<Channel> channels() {
    return List.copyOf(columns.keySet());
  }

  /** Outside air as somebody read it for the whole trip; empty if nobody did. */
  OptionalDouble noticedCelsius() {
    return noticedCelsius;
  }

  /** Calibration ids of the engine's control unit; empty if none was told. */
  List<String> calibrations() {
    return calibrations;
  }

  /** What it pulled. */
  PullPower power() {
    return power;
  }

  /** A channel's values from a second to before another, NaN where nothing was heard. */
  double[] span(Channel channel, int from, int to) {
    double[] span = new double[Math.max(0, to - from)];
    Arrays.fill(span, Double.NaN);
    double[] column = columns.get(channel);
    int first = Math.max(0, from);
    int end = Math.min(seconds, to);
    if (column != null && end > first) {
      System.arraycopy(column, first, span, first - from, end - first);
    }
    return span;
  }

  /** The value at a second; empty where nothing fresh was heard. */
  OptionalDouble at(Channel channel, int second) {
    double value = span(channel, second, second + 1)[0];
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Every column from a second to before another, with the power at the wheels. */
  Map<Channel, double[]> columns(int from, int to) {
    Map<Channel, double[]> cut = new LinkedHashMap<>();
    for (Channel channel : columns.keySet()) {
      double[] span = span(channel, from, to);
      if (Figures.count(span) > 0 || channel.equals(Channels.WHEEL_POWER)) {
        cut.put(channel, span);
      }
    }
    return cut;
  }
}
