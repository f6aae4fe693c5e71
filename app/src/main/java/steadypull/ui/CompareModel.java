package steadypull.ui;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.report.ComparisonDesk.Chosen;
import steadypull.store.TripSummary;

/** What the screen that compares runs knows. FX thread only. */
final class CompareModel {
  private final ReadOnlyObjectWrapper<List<TripSummary>> trips =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<List<Chosen>> chosen = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Channel> channel =
      new ReadOnlyObjectWrapper<>(Channels.CHARGE_COOLANT_TEMP);
  private final ReadOnlyObjectWrapper<Shown> shown =
      new ReadOnlyObjectWrapper<>(new Shown.Nothing());
  private final ReadOnlyObjectWrapper<String> told = new ReadOnlyObjectWrapper<>("");
  private long wanted;

  /** What is shown. A closed set. */
  sealed interface Shown {
    /** Not both sides are chosen. */
    record Nothing() implements Shown {}

    /** The runs are being read. */
    record Working() implements Shown {}

    /** What came of it. */
    record Told(Comparison comparison) implements Shown {}

    /** Why there is nothing. */
    record Refused(String message) implements Shown {}
  }

  /** The trips that can be chosen, newest first. */
  ReadOnlyObjectProperty<List<TripSummary>> tripsProperty() {
    return trips.getReadOnlyProperty();
  }

  /** Those that were chosen. */
  ReadOnlyObjectProperty<List<Chosen>> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** The temperature that is compared. */
  ReadOnlyObjectProperty<Channel> channelProperty() {
    return channel.getReadOnlyProperty();
  }

  /** What is shown. */
  ReadOnlyObjectProperty<Shown> shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** What was said last of a report; empty if nothing was. */
  ReadOnlyObjectProperty<String> toldProperty() {
    return told.getReadOnlyProperty();
  }

  void trips(List<TripSummary> found) {
    trips.set(List.copyOf(found));
  }

  void channel(Channel changed) {
    channel.set(changed);
  }

  /** Takes a trip to a side, to the other one, or away if it is on that side already. */
  void toggle(TripSummary trip, Side side) {
    boolean wasThere = sideOf(trip).filter(side::equals).isPresent();
    List<Chosen> changed = new ArrayList<>(chosen.get());
    changed.removeIf(each -> each.trip().id().equals(trip.id()));
    if (!wasThere) {
      changed.add(new Chosen(trip, side));
    }
    chosen.set(List.copyOf(changed));
  }

  /** On which side a trip is; empty if on none. */
  Optional<Side> sideOf(TripSummary trip) {
    return chosen.get().stream()
        .filter(each -> each.trip().id().equals(trip.id()))
        .map(Chosen::side)
        .findFirst();
  }

  /** Whether both sides have a trip. */
  boolean isComplete() {
    return Arrays.stream(Side.values())
        .allMatch(side -> chosen.get().stream().anyMatch(each -> each.side() == side));
  }

  /** The temperatures that all chosen trips have, in the channels' order. */
  List<Channel> channels() {
    return Channels.all().stream()
        .filter(each -> each.unit().equals("degC") && !each.equals(Channels.AMBIENT_AIR_TEMP))
        .filter(each -> !each.equals(Channels.INTAKE_AIR_TEMP))
        .filter(
            each ->
                !chosen.get().isEmpty()
                    && chosen.get().stream().allMatch(one -> one.trip().channels().contains(each)))
        .toList();
  }

  /** Begins another question; answers to older ones are dropped. */
  long ask() {
    shown.set(isComplete() ? new Shown.Working() : new Shown.Nothing());
    return ++wanted;
  }

  /** Takes an answer if it is still wanted. */
  void answer(long question, Shown answer) {
    if (question == wanted) {
      shown.set(answer);
    }
  }

  void tell(String said) {
    told.set(said);
  }
}
