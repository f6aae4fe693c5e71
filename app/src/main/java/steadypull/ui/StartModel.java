package steadypull.ui;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.drive.PortChoice;

/** What the start screen knows and what was chosen on it. FX thread only. */
final class StartModel {
  private final ReadOnlyObjectWrapper<Facts> facts =
      new ReadOnlyObjectWrapper<>(new Facts(List.of(), List.of(), true));
  private final ReadOnlyObjectWrapper<Choice> choice =
      new ReadOnlyObjectWrapper<>(new Choice("", Optional.empty()));
  private final ReadOnlyObjectWrapper<Stage> stage =
      new ReadOnlyObjectWrapper<>(new Stage.Asking());

  private final int leftBehind;

  /**
   * Nothing was found yet.
   *
   * @param leftBehind trips that a crash had left behind and that have been brought to their end
   */
  StartModel(int leftBehind) {
    this.leftBehind = leftBehind;
  }

  /** How many trips a crash had left behind. */
  int leftBehind() {
    return leftBehind;
  }

  /**
   * What was found.
   *
   * @param vehicles names, last used first
   * @param ports the likeliest for an adapter first
   * @param isLooking whether ports are still being looked for
   */
  record Facts(List<String> vehicles, List<PortChoice> ports, boolean isLooking) {
    Facts {
      vehicles = List.copyOf(vehicles);
      ports = List.copyOf(ports);
    }
  }

  /**
   * What was chosen.
   *
   * @param vehicle name; blank if none. A simulated drive brings its own
   * @param port the port, if one
   */
  record Choice(String vehicle, Optional<PortChoice> port) {
    boolean isComplete() {
      return port.filter(each -> each.simulated() || !vehicle.isBlank()).isPresent();
    }
  }

  /** Where the start stands. A closed set. */
  sealed interface Stage {
    record Asking() implements Stage {}

    record Opening() implements Stage {}

    /**
     * The drive could not begin.
     *
     * @param message what was tried, found and what to do
     */
    record Refused(String message) implements Stage {}
  }

  ReadOnlyObjectProperty<Facts> factsProperty() {
    return facts.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Choice> choiceProperty() {
    return choice.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** Says that the ports are being looked for. */
  void look() {
    facts.set(new Facts(facts.get().vehicles(), facts.get().ports(), true));
  }

  /**
   * Takes what was found; the first of each is chosen unless one is already.
   *
   * @param newName name for a first vehicle, where the library has none
   */
  void found(List<String> vehicles, List<PortChoice> ports, String newName) {
    Choice before = choice.get();
    String vehicle =
        before.vehicle().isBlank() ? first(vehicles).orElse(newName) : before.vehicle();
    Optional<PortChoice> port = before.port().filter(ports::contains).or(() -> first(ports));
    facts.set(new Facts(vehicles, ports, false));
    choice.set(new Choice(vehicle, port));
  }

  void chooseVehicle(String name) {
    choice.set(new Choice(name.strip(), choice.get().port()));
  }

  void choosePort(PortChoice port) {
    choice.set(new Choice(choice.get().vehicle(), Optional.of(port)));
  }

  void setStage(Stage changed) {
    stage.set(changed);
  }

  private static <T> Optional<T> first(List<T> list) {
    return list.isEmpty() ? Optional.empty() : Optional.of(list.getFirst());
  }
}
