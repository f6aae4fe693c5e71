package steadypull.ui;

import java.util.List;
import java.util.concurrent.Executor;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveDesk;
import steadypull.drive.DriveException;
import steadypull.drive.VehicleSensors;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleWords;

/** Opens the sensors screen and does what is pressed there. FX thread only. */
final class SensorsDesk {
  private final DriveDesk desk;
  private final Words words;
  private final Executor background;

  SensorsDesk(DriveDesk desk, Words words, Executor background) {
    this.desk = desk;
    this.words = words;
    this.background = background;
  }

  /** Shows the sensors of a vehicle. */
  void open(String vehicleName, UnitSystem units, FittedPane root, Runnable back) {
    SensorsModel model = new SensorsModel();
    RoleWords roleWords = new RoleWords(words.locale(), new QuantityFormat(words.locale(), units));
    root.show(
        new SensorsScreen(
            words,
            roleWords,
            vehicleName,
            model,
            proposals -> confirm(vehicleName, proposals, model),
            back));
    ask(() -> desk.sensors(vehicleName), model);
  }

  private void confirm(
      String vehicleName, List<RoleFinding.Proposed> proposals, SensorsModel model) {
    ask(() -> desk.confirm(vehicleName, proposals), model);
  }

  private void ask(Question question, SensorsModel model) {
    background.execute(
        () -> {
          SensorsModel.State state = answer(question);
          FxThread.run(() -> model.set(state));
        });
  }

  private static SensorsModel.State answer(Question question) {
    try {
      return new SensorsModel.State.Found(question.ask());
    } catch (DriveException refused) {
      return new SensorsModel.State.Refused(String.valueOf(refused.getMessage()));
    }
  }

  @FunctionalInterface
  private interface Question {
    VehicleSensors ask() throws DriveException;
  }
}
