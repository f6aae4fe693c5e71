package steadypull.ui;

import java.util.List;
import steadypull.channel.Channels;
import steadypull.drive.VehicleSensors;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.Missing;
import steadypull.vehicle.role.Reason;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleFinding.Confidence;
import steadypull.vehicle.role.RoleSurvey;
import steadypull.vehicle.role.Suspect;

/** What the drives of invented vehicles have shown of their sensors. */
final class SensorMoments {
  private static final RoleFinding.Proposed BEFORE =
      new RoleFinding.Proposed(
          Channels.CHARGE_AIR_TEMP_IN,
          "01.75.2",
          Confidence.CLEAR,
          new Reason.HotAsCompressed(169, 228, 35, 123));
  private static final RoleFinding.Proposed AFTER =
      new RoleFinding.Proposed(
          Channels.CHARGE_AIR_TEMP_OUT,
          "01.77.1",
          Confidence.LIKELY,
          new Reason.CooledAfterCompression(94, 228, 35, 123, 34));

  private SensorMoments() {}

  /** Every place told, the one after the cooler confirmed. */
  static VehicleSensors told() {
    return new VehicleSensors(
        vehicle().withSource(new SignalSource("charge_air_temp_out", "01.77.1")),
        new RoleSurvey(
            List.of(
                new RoleFinding.Proposed(
                    Channels.CHARGE_COOLANT_TEMP,
                    "01.67.2",
                    Confidence.LIKELY,
                    new Reason.OwnCircuit(86, 96, 19)),
                BEFORE,
                AFTER,
                new RoleFinding.Proposed(
                    Channels.EXHAUST_TEMP_BEFORE_TURBINE,
                    "01.78.1",
                    Confidence.CLEAR,
                    new Reason.BeforeTurbine(661, 112, "01.78.2")),
                new RoleFinding.Proposed(
                    Channels.EXHAUST_TEMP_AFTER_TURBINE,
                    "01.78.2",
                    Confidence.CLEAR,
                    new Reason.AfterTurbine(549, 112, "01.78.1"))),
            List.of()));
  }

  /** Little told: some sensors are missing, one stands still. */
  static VehicleSensors puzzling() {
    return new VehicleSensors(
        vehicle(),
        new RoleSurvey(
            List.of(
                new RoleFinding.CannotTell(
                    Channels.CHARGE_COOLANT_TEMP, new Missing.LayoutSaysAir("01.67.2", 86, 96)),
                BEFORE,
                new RoleFinding.CannotTell(Channels.CHARGE_AIR_TEMP_OUT, new Missing.MoreBoost(12)),
                new RoleFinding.CannotTell(
                    Channels.EXHAUST_TEMP_BEFORE_TURBINE,
                    new Missing.NoTurbineBetween("01.78.1", "01.79.1", 6, 80))),
            List.of(
                new Suspect("01.77.1", new Suspect.Stuck(90)),
                new Suspect("01.68.1", new Suspect.OffAfterRest(22)))));
  }

  private static Vehicle vehicle() {
    return Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
  }
}
