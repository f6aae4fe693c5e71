package steadypull.drive;

import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.Reading;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.store.TripEvent;

/** Puts what the reader tells into the queue of the pipeline. Port thread only. */
record PortIntake(ArrivalQueue arrivals) implements ReaderListener {
  @Override
  public void reading(Reading reading) {
    arrivals.putWhenThereIsRoom(new Arrival.Heard(reading));
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {
    arrivals.putWhenThereIsRoom(new Arrival.LinkChanged(state, nanoTime));
  }

  @Override
  public void troubleCodes(TroubleCodeReport report, long nanoTime) {
    DiagnosisText.of(report)
        .forEach(
            (status, detail) ->
                arrivals.put(
                    new Arrival.Diagnosed(TripEvent.Kind.CODES, status.name(), detail, nanoTime)));
  }

  @Override
  public void freezeFrame(FreezeFrame frame, long nanoTime) {
    tell("frame of " + frame.controlUnit(), DiagnosisText.of(frame), nanoTime);
  }

  @Override
  public void identified(ControlUnitIdentity identity, long nanoTime) {
    tell("identity of " + identity.controlUnit(), DiagnosisText.of(identity), nanoTime);
  }

  private void tell(String subject, String detail, long nanoTime) {
    arrivals.put(new Arrival.Diagnosed(TripEvent.Kind.VEHICLE, subject, detail, nanoTime));
  }
}
