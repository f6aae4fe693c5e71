package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceJson;
import steadypull.advice.Level;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;

/** Writes down what a pipeline brings forth. */
final class Heard implements PipelineOutput {
  final List<AdviceEvent> advice = new ArrayList<>();
  final List<TripEntry> entries = new ArrayList<>();
  final List<DriveSnapshot> seconds = new ArrayList<>();

  @Override
  public void entry(TripEntry entry) {
    entries.add(entry);
  }

  @Override
  public void advice(AdviceEvent event) {
    advice.add(event);
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    seconds.add(snapshot);
  }

  List<String> adviceLines() {
    return advice.stream().map(AdviceJson::event).toList();
  }

  List<Sample> samples() {
    return entries.stream()
        .filter(TripEntry.OfSample.class::isInstance)
        .map(entry -> ((TripEntry.OfSample) entry).sample())
        .toList();
  }

  Optional<AdviceEvent> first(AdviceEvent.Kind kind) {
    return advice.stream().filter(event -> event.kind() == kind).findFirst();
  }

  /** The first advisory that asks the driver to act. */
  Optional<AdviceEvent> firstToActOn() {
    return advice.stream()
        .filter(event -> event.kind() == AdviceEvent.Kind.RAISED)
        .filter(event -> event.level().filter(level -> level != Level.NOTICE).isPresent())
        .findFirst();
  }

  DriveSnapshot last() {
    return seconds.getLast();
  }
}
