package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.drive.DriveOutcome;

class DriveVerdictTest {
  private static final Optional<String> NONE = Optional.empty();
  private static final Optional<String> LOST = Optional.of("The port is gone.");
  private static final Optional<String> FULL = Optional.of("The disk is full.");

  private static Optional<String> failure(
      Optional<String> trip, Optional<String> link, Optional<String> unkept) {
    return DriveVerdict.failure(new DriveOutcome(trip, link, unkept));
  }

  @Test
  void aTripThatIsKeptWholeIsDoneEvenIfTheLinkWasLostOnTheWay() {
    assertThat(failure(Optional.of("t1"), NONE, NONE)).isEmpty();
    assertThat(failure(Optional.of("t1"), LOST, NONE)).isEmpty();
  }

  @Test
  void aTripWithoutItsEndIsAFailureThatNamesTripAndReason() {
    assertThat(failure(Optional.of("t1"), NONE, FULL))
        .hasValueSatisfying(why -> assertThat(why).contains("t1", "end", "The disk is full."));
  }

  // The vehicle was heard, so blaming the link would send people to the wrong plug.
  @Test
  void aLibraryThatTookNothingIsBlamedAndNotTheVehicle() {
    assertThat(failure(NONE, LOST, FULL))
        .hasValueSatisfying(
            why ->
                assertThat(why)
                    .contains("No trip was kept", "The disk is full.")
                    .doesNotContain("heard", "port"));
  }

  @Test
  void silenceIsAFailureWithTheLastTroubleOfTheLink() {
    assertThat(failure(NONE, LOST, NONE))
        .hasValueSatisfying(
            why -> assertThat(why).contains("nothing was heard", "The port is gone."));
    assertThat(failure(NONE, NONE, NONE))
        .hasValueSatisfying(why -> assertThat(why).endsWith("from the vehicle."));
  }

  // The engine was off when the drive was ended: the trips before are kept.
  @Test
  void aDriveThatEndsBetweenTripsIsDone() {
    DriveOutcome outcome = new DriveOutcome(List.of("t1"), NONE, LOST, NONE);

    assertThat(DriveVerdict.failure(outcome)).isEmpty();
  }
}
