package steadypull.adapter;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;

/** Keeps what a reader tells, and closes the reader when a condition is met. */
final class Recording implements ReaderListener {
  /** A state and when it was told, seconds. */
  record Told(LinkState state, double seconds) {}

  final List<Reading> readings = new ArrayList<>();
  final List<Told> states = new ArrayList<>();

  final List<TroubleCodeReport> reports = new ArrayList<>();
  final List<Double> reportedAtSeconds = new ArrayList<>();
  final List<FreezeFrame> frames = new ArrayList<>();
  final List<ControlUnitIdentity> identities = new ArrayList<>();

  /** Called with every event's time in seconds. */
  Consumer<Double> at = seconds -> {};

  @Override
  public void reading(Reading reading) {
    readings.add(reading);
    at.accept(reading.nanoTime() / 1e9);
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {
    states.add(new Told(state, nanoTime / 1e9));
    at.accept(nanoTime / 1e9);
  }

  @Override
  public void troubleCodes(TroubleCodeReport report, long nanoTime) {
    reports.add(report);
    reportedAtSeconds.add(nanoTime / 1e9);
  }

  @Override
  public void freezeFrame(FreezeFrame frame, long nanoTime) {
    frames.add(frame);
  }

  @Override
  public void identified(ControlUnitIdentity identity, long nanoTime) {
    identities.add(identity);
  }

  /** States without repetitions. */
  List<String> story() {
    List<String> story = new ArrayList<>();
    for (Told told : states) {
      String name = told.state().getClass().getSimpleName();
      if (story.isEmpty() || !story.getLast().equals(name)) {
        story.add(name);
      }
    }
    return story;
  }

  List<Reading> of(String key) {
    return readings.stream().filter(reading -> reading.signal().key().equals(key)).toList();
  }

  LinkState.Connected connected() {
    return states.stream()
        .map(Told::state)
        .filter(LinkState.Connected.class::isInstance)
        .map(LinkState.Connected.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("never connected: " + story()));
  }
}
