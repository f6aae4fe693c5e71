package steadypull.drive;

import java.util.Locale;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.HeatTeacher;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.thermal.HeatLessons;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/**
 * Looks at a finished trip as the drive did, second by second, for what it tells of its vehicle's
 * heat and where its control unit began to take torque away. Any thread.
 */
public final class TripTeacher implements HeatTeacher {
  @Override
  public Look begin(Vehicle vehicle, TripDetails details) {
    return new OneTrip(vehicle, OnRollers.isSaid(details));
  }

  private static final class OneTrip implements Look {
    private final HeatLessons heat;
    private final DerateBeginnings derates;
    private final DiagnosisLog diagnosis = new DiagnosisLog(Locale.ENGLISH);

    private final OnRollers rollers = new OnRollers();
    private final boolean isSaidOnRollers;

    OneTrip(Vehicle vehicle, boolean isSaidOnRollers) {
      this.isSaidOnRollers = isSaidOnRollers;
      heat = new HeatLessons(vehicle);
      derates = new DerateBeginnings(vehicle);
    }

    @Override
    public void accept(TripEntry entry) {
      switch (entry) {
        case TripEntry.OfSample(Sample sample) -> {
          if (!Channels.derived().contains(sample.channel())) {
            heat.accept(sample);
            rollers.accept(sample);
            derates.accept(sample);
          }
        }
        case TripEntry.OfEvent(TripEvent event) -> accept(event);
      }
    }

    private void accept(TripEvent event) {
      switch (event.kind()) {
        case CODES, VEHICLE -> {
          diagnosis.take(event);
          derates.accept(diagnosis.codes());
        }
        case LINK,
            MARK,
            ROAD,
            ACKNOWLEDGED,
            SNOOZED,
            RESUMED,
            CLOCK,
            TABLET,
            ADVICE,
            SHOWN,
            RECORDING -> {}
      }
    }

    /** A workshop's fan is no road's wind: on rollers only derates are the vehicle's own. */
    @Override
    public TripHeat finish() {
      TripHeat told = isSaidOnRollers || rollers.hasStayed() ? TripHeat.NOTHING : heat.finish();
      return told.withDerates(derates.begun());
    }
  }
}
