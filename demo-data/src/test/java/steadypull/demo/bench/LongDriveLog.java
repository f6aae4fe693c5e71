package steadypull.demo.bench;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** Counts what a reader tells during a long drive, without keeping it. */
final class LongDriveLog implements ReaderListener {
  /** The last seconds of a minute, in which everything has to be as if nothing had been. */
  static final int LAST_SECONDS = 10;

  private static final double NANOS = 1e9;
  private static final double NEAR = 2.5; // a step of the sensor and its noise

  private final LongDrive drive;
  private final Drive truth;
  private final FaultPlan faults;
  private final Map<String, Integer> totals = new TreeMap<>();
  private final int[] lastSeconds;
  private final List<Long> heapByHour = new ArrayList<>();
  private int untrue;
  private String firstUntrue = "";
  private int compared;
  private int connections;
  private boolean isConnected;
  private final CountedLinks links;
  private Optional<VehicleReader> reader = Optional.empty();

  LongDriveLog(LongDrive drive) {
    this.drive = drive;
    truth = new Drive(drive.scenario(), drive.seed());
    faults = new FaultPlan(drive.faults());
    lastSeconds = new int[(int) drive.duration().toMinutes() + 1];
    links = new CountedLinks(new Bench("demo:long-drive", drive.settings()));
  }

  /** Reads from the first second to the last. */
  LongDriveLog run() {
    ReaderSettings settings = ReaderLog.settings(ReaderSettings.Pace.POLITE);
    VehicleReader made = new VehicleReader(links, settings, this);
    reader = Optional.of(made);
    made.run();
    return this;
  }

  @Override
  public void reading(Reading reading) {
    double seconds = reading.nanoTime() / NANOS;
    totals.merge(reading.signal().key(), 1, Integer::sum);
    int minute = (int) (seconds / LongDrive.MINUTE);
    if (minute < lastSeconds.length
        && seconds - minute * LongDrive.MINUTE >= LongDrive.MINUTE - LAST_SECONDS) {
      lastSeconds[minute]++;
    }
    compare(reading, seconds);
    passed(seconds);
  }

  private void compare(Reading reading, double seconds) {
    Sensor sensor = TrueReadings.SLOW_SENSORS.get(reading.signal().key());
    boolean isTellable =
        !faults.has(Fault.Kind.FLIPPED_BITS, seconds)
            && !faults.has(Fault.Kind.FLIPPED_BITS, seconds - 1);
    if (sensor != null && isTellable) {
      truth.advanceTo(seconds);
      compared++;
      if (Math.abs(reading.value() - truth.read(sensor)) > NEAR) {
        untrue++;
        firstUntrue =
            firstUntrue.isEmpty() ? reading + ", said " + truth.read(sensor) : firstUntrue;
      }
    }
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {
    connections += state instanceof LinkState.Connected && !isConnected ? 1 : 0;
    isConnected = state instanceof LinkState.Connected;
    passed(nanoTime / NANOS);
  }

  /** Takes the heap's size at every hour and ends with the last second. */
  private void passed(double seconds) {
    Duration passed = Duration.ofSeconds((long) seconds);
    if (passed.toHours() > heapByHour.size()) {
      heapByHour.add(heapAfterCollection());
    }
    if (passed.compareTo(drive.duration()) >= 0) {
      reader.ifPresent(VehicleReader::close);
    }
  }

  private static long heapAfterCollection() {
    for (int i = 0; i < 3; i++) {
      ManagementFactory.getMemoryMXBean().gc();
    }
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
  }

  /** Readings by key. */
  Map<String, Integer> totals() {
    return totals;
  }

  /** How long the drive was to last. */
  long seconds() {
    return drive.duration().toSeconds();
  }

  /** All readings. */
  int total() {
    return totals.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Readings in the last ten seconds of a minute. */
  int inLastSeconds(int minute) {
    return lastSeconds[minute];
  }

  /** Readings that no sensor had said, of those that could be compared. */
  int untrue() {
    return untrue;
  }

  /** The first of these in words, or empty text. */
  String firstUntrue() {
    return firstUntrue;
  }

  /** Readings that were compared with what the sensors said. */
  int compared() {
    return compared;
  }

  /** How often the vehicle was found. */
  int connections() {
    return connections;
  }

  /** Bytes in use after a collection, one entry for every full hour. */
  List<Long> heapByHour() {
    return heapByHour;
  }

  CountedLinks links() {
    return links;
  }
}
