package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.adapter.link.LinkSource;

/** Everything that a reader told, until a time or a reading ends it. */
final class ReaderLog implements ReaderListener {
  static final Set<String> WANTED =
      Set.of(
          "01.04", "01.05", "01.0B", "01.0C", "01.0D", "01.0F", "01.10", "01.33", "01.42", "01.46",
          "01.49", "01.5C", "01.5E", "01.61", "01.62", "01.63", "01.67.1", "01.67.2", "01.75.2",
          "01.77.1", "01.78.1", "01.78.2", "01.87.1", "01.8E", "01.A4.1");

  private static final DefinedSignal FLUID =
      new DefinedSignal(
          0x1E1C, "7E1", "gearbox fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);

  final List<Reading> readings = new ArrayList<>();
  final List<LinkState> states = new ArrayList<>();
  final List<TroubleCodeReport> codes = new ArrayList<>();
  final List<FreezeFrame> freezeFrames = new ArrayList<>();
  final List<ControlUnitIdentity> identities = new ArrayList<>();
  private final List<Long> signs = new ArrayList<>();
  private final Optional<String> lastKey;
  double untilSeconds = Double.POSITIVE_INFINITY;
  private Optional<VehicleReader> reader = Optional.empty();

  /** Ends at a time only, or at the first reading of a key while connected. */
  ReaderLog(Optional<String> lastKey) {
    this.lastKey = lastKey;
  }

  /** Everything that the tests want, and the gearbox's own signal. */
  static ReaderSettings settings(ReaderSettings.Pace pace) {
    return new ReaderSettings(WANTED, List.of(FLUID), pace);
  }

  /** Reads a bench at the polite pace for some seconds of its time. */
  static ReaderLog read(String address, double seconds) {
    ReaderLog log = new ReaderLog(Optional.empty());
    log.untilSeconds = seconds;
    try {
      log.run(new BenchLinks().find(address).orElseThrow(), settings(ReaderSettings.Pace.POLITE));
    } catch (Exception malformed) {
      throw new AssertionError(malformed);
    }
    return log;
  }

  void run(LinkSource source, ReaderSettings settings) {
    VehicleReader made = new VehicleReader(source, settings, this);
    reader = Optional.of(made);
    made.run();
  }

  @Override
  public void reading(Reading reading) {
    readings.add(reading);
    signs.add(reading.nanoTime());
    endAt(reading.nanoTime());
    if (lastKey.equals(Optional.of(reading.signal().key()))
        && first(LinkState.Connected.class).isPresent()) {
      close();
    }
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {
    if (!(state instanceof LinkState.Closed)) {
      states.add(state);
      signs.add(nanoTime);
    }
    endAt(nanoTime);
  }

  @Override
  public void troubleCodes(TroubleCodeReport report, long nanoTime) {
    codes.add(report);
  }

  @Override
  public void freezeFrame(FreezeFrame frame, long nanoTime) {
    freezeFrames.add(frame);
  }

  @Override
  public void identified(ControlUnitIdentity identity, long nanoTime) {
    identities.add(identity);
  }

  private void endAt(long nanoTime) {
    if (nanoTime / 1e9 >= untilSeconds) {
      close();
    }
  }

  private void close() {
    reader.ifPresent(VehicleReader::close);
  }

  List<Reading> readings(String key) {
    return readings.stream().filter(reading -> reading.signal().key().equals(key)).toList();
  }

  List<Reading> readingsBetween(double fromSeconds, double untilSeconds) {
    return readings.stream()
        .filter(reading -> reading.nanoTime() / 1e9 >= fromSeconds)
        .filter(reading -> reading.nanoTime() / 1e9 <= untilSeconds)
        .toList();
  }

  <T extends LinkState> Optional<T> first(Class<T> kind) {
    return states.stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }

  LinkState last() {
    return states.getLast();
  }

  double longestSilenceSeconds() {
    double longest = 0;
    for (int i = 1; i < signs.size(); i++) {
      longest = Math.max(longest, (signs.get(i) - signs.get(i - 1)) / 1e9);
    }
    return longest;
  }
}
