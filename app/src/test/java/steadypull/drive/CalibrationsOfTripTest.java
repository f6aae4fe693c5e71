package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.store.TripEvent;

/** With which software an engine was driven, from what its control unit told. */
class CalibrationsOfTripTest {
  private static TripEvent told(String address, String... calibrations) {
    return new TripEvent(
        5, TripEvent.Kind.VEHICLE, DiagnosisText.of(identity(address, List.of(calibrations))));
  }

  private static ControlUnitIdentity identity(String address, List<String> calibrations) {
    return new ControlUnitIdentity(address, "ECM", calibrations, List.of());
  }

  @Test
  void theEnginesAreToldAndTheGearboxesAreNot() {
    CalibrationsOfTrip calibrations = new CalibrationsOfTrip();

    assertThat(calibrations.apply(new TripEvent(1, TripEvent.Kind.MARK, "pull 1"))).isEmpty();
    assertThat(calibrations.apply(told("7E9", "BOX-1"))).isEmpty();
    assertThat(calibrations.apply(told("7E8", "K-16", "D-2"))).containsExactly("K-16", "D-2");
    assertThat(calibrations.apply(new TripEvent(9, TripEvent.Kind.VEHICLE, "no JSON")))
        .containsExactly("K-16", "D-2");
    assertThat(new CalibrationsOfTrip().apply(told("18DAF110", "K-17"))).containsExactly("K-17");
  }
}
