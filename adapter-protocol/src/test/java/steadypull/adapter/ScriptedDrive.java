package steadypull.adapter;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import steadypull.adapter.ReaderSettings.Pace;
import steadypull.adapter.diagnostic.DefinedSignal;

/** A vehicle of two control units behind an adapter, and a reader driven in scripted time. */
final class ScriptedDrive {
  static final DefinedSignal FLUID =
      new DefinedSignal(
          0x1E1C, "7E1", "transmission fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);

  private static final Set<String> USUAL =
      Set.of(
          "01.04", "01.05", "01.0B", "01.0C", "01.0D", "01.0F", "01.49", "01.61", "01.62", "01.33",
          "01.46", "01.67.1", "01.67.2", "01.77.1", "01.77.2", "01.77.3", "01.5E");

  final ScriptedVehicle vehicle;
  final ScriptedAdapter adapter;
  final Recording recording = new Recording();
  Set<String> wanted = USUAL;
  Set<String> seldom = Set.of();
  List<DefinedSignal> defined = List.of(FLUID);

  ScriptedDrive() {
    this(usualVehicle());
  }

  ScriptedDrive(ScriptedVehicle vehicle) {
    this.vehicle = vehicle;
    this.adapter = new ScriptedAdapter(vehicle);
  }

  private static ScriptedVehicle usualVehicle() {
    return new ScriptedVehicle()
        .parameter("7E8", 0x04, "7F")
        .parameter("7E8", 0x05, "82")
        .parameter("7E8", 0x0B, "C8")
        .parameter("7E8", 0x0C, "1F40")
        .parameter("7E8", 0x0D, "50")
        .parameter("7E8", 0x0F, "4B")
        .parameter("7E8", 0x33, "55")
        .parameter("7E8", 0x46, "4B")
        .parameter("7E8", 0x61, "B4")
        .parameter("7E8", 0x67, "03806E")
        .parameter("7E8", 0x77, "037A5C0000")
        .parameter("7E9", 0x0C, "0000")
        .parameter("7E9", 0x0D, "51");
  }

  ReaderSettings settings(Pace pace) {
    return new ReaderSettings(wanted, seldom, defined, pace);
  }

  VehicleReader reader() {
    return new VehicleReader(adapter, settings(Pace.POLITE), recording);
  }

  void go(double seconds) {
    go(seconds, Pace.POLITE, now -> {});
  }

  /** Runs a reader for a span of scripted time; events may change the scene on the way. */
  void go(double seconds, Consumer<Double> events) {
    go(seconds, Pace.POLITE, events);
  }

  void go(double seconds, Pace pace, Consumer<Double> events) {
    VehicleReader reader = new VehicleReader(adapter, settings(pace), recording);
    double end = adapter.clock.seconds() + seconds;
    recording.at =
        now -> {
          events.accept(now);
          if (now >= end) {
            reader.close();
          }
        };
    reader.run();
  }

  /** Seconds at which a signal was read last; 0 if never. */
  double lastReadAt(String key) {
    List<Reading> readings = recording.of(key);
    return readings.isEmpty() ? 0 : readings.getLast().nanoTime() / 1e9;
  }

  /** Commands sent within a span of scripted time. */
  List<String> sentBetween(double from, double until) {
    return IntStream.range(0, adapter.sent.size())
        .filter(i -> adapter.sentAtSeconds.get(i) > from && adapter.sentAtSeconds.get(i) < until)
        .mapToObj(adapter.sent::get)
        .toList();
  }

  /** The last commands sent. */
  List<String> lastSent(int count) {
    return adapter.sent.subList(adapter.sent.size() - count, adapter.sent.size());
  }
}
