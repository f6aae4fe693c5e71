package steadypull.ui;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.drive.VehicleSensors;

/** What the sensors screen knows. FX thread only. */
final class SensorsModel {
  private final ReadOnlyObjectWrapper<State> state =
      new ReadOnlyObjectWrapper<>(new State.Looking());

  /** Where the screen stands. A closed set. */
  sealed interface State {
    record Looking() implements State {}

    record Found(VehicleSensors sensors) implements State {}

    /**
     * The library refused.
     *
     * @param message what was tried, found and what to do
     */
    record Refused(String message) implements State {}
  }

  ReadOnlyObjectProperty<State> stateProperty() {
    return state.getReadOnlyProperty();
  }

  void set(State changed) {
    state.set(changed);
  }
}
