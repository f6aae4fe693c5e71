package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.Reading;
import steadypull.adapter.diagnostic.Signal;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleSignal;

class ReadingIntakeTest {
  private static final long START_NANOS = 7_000_000_000L;
  private static final TripClock CLOCK = new TripClock(Instant.EPOCH, START_NANOS);
  private static final Vehicle WATER = Vehicle.unknown("rig", CoolingLayout.WATER_TO_AIR);

  @Test
  void aReadingIsStampedFromTheStartOfTheTrip() {
    ReadingIntake intake = intake(WATER);

    assertThat(intake.samples(reading("7E8", "01.05", 88, 2.5), CLOCK))
        .containsExactly(new Sample(Channels.ENGINE_COOLANT_TEMP, 2_500_000, 88));
  }

  @Test
  void aGearboxThatAnswersTooDoesNotOverwriteTheEngine() {
    ReadingIntake intake = intake(WATER);

    assertThat(intake.samples(reading("7E8", "01.0C", 1800, 1), CLOCK)).hasSize(1);
    assertThat(intake.samples(reading("7E9", "01.0C", 1790, 1.01), CLOCK)).isEmpty();
    assertThat(intake.samples(reading("7E8", "01.0C", 1810, 2), CLOCK)).hasSize(1);
  }

  @Test
  void theSecondBestSourceStepsInWhenTheBestHasBeenSilentForHalfAMinute() {
    ReadingIntake intake = intake(WATER);
    intake.samples(reading("7E8", "01.05", 88, 0), CLOCK);

    assertThat(intake.samples(reading("7E8", "01.67.1", 88, 29), CLOCK)).isEmpty();
    assertThat(intake.samples(reading("7E8", "01.67.1", 88, 31), CLOCK)).hasSize(1);
    assertThat(intake.samples(reading("7E8", "01.05", 89, 32), CLOCK))
        .as("the best source is back")
        .hasSize(1);
  }

  @Test
  void theWaterCircuitIsOnlySoughtWhereTheVehicleHasOne() {
    Reading second = reading("7E8", "01.67.2", 70, 1);

    assertThat(intake(WATER).samples(second, CLOCK))
        .extracting(Sample::channel)
        .containsExactly(Channels.CHARGE_COOLANT_TEMP);
    assertThat(intake(WATER.withLayout(CoolingLayout.AIR_TO_AIR)).samples(second, CLOCK)).isEmpty();
  }

  @Test
  void aRoleThatTheOwnerConfirmedComesBeforeTheUsualSource() {
    Vehicle vehicle = WATER.withSources(List.of(new SignalSource("charge_air_temp_out", "01.0F")));
    ReadingIntake intake = intake(vehicle);

    assertThat(intake.samples(reading("7E8", "01.0F", 61, 1), CLOCK))
        .extracting(Sample::channel)
        .containsExactlyInAnyOrder(Channels.CHARGE_AIR_TEMP_OUT, Channels.INTAKE_AIR_TEMP);
    assertThat(intake.samples(reading("7E8", "01.77.1", 75, 2), CLOCK)).isEmpty();
  }

  /** Else the air before the cooler would be shown, and warned of, as the air behind it. */
  @Test
  void aSensorConfirmedInOnePlaceNoLongerFeedsAnother() {
    Vehicle vehicle =
        WATER.withSources(
            List.of(
                new SignalSource("charge_air_temp_in", "01.77.1"),
                new SignalSource("charge_coolant_temp", "01.67.1"),
                new SignalSource("exhaust_temp_before_turbine", "01.78.1")));
    ReadingIntake intake = intake(vehicle);

    assertThat(channels(intake, "01.77.1")).containsExactly(Channels.CHARGE_AIR_TEMP_IN);
    assertThat(channels(intake, "01.67.1")).containsExactly(Channels.CHARGE_COOLANT_TEMP);
    assertThat(channels(intake, "01.78.1")).containsExactly(Channels.EXHAUST_TEMP_BEFORE_TURBINE);
    assertThat(channels(intake, "01.05")).containsExactly(Channels.ENGINE_COOLANT_TEMP);
  }

  @Test
  void theFirstExhaustSensorHasAnUnknownPlaceUntilSomebodyConfirmsOne() {
    assertThat(channels(intake(WATER), "01.78.1")).containsExactly(Channels.EXHAUST_GAS_TEMP);
  }

  private static List<Channel> channels(ReadingIntake intake, String key) {
    return intake.samples(reading("7E8", key, 80, 1), CLOCK).stream().map(Sample::channel).toList();
  }

  @Test
  void aSignalOfTheVehiclesOwnFeedsItsChannel() {
    Vehicle vehicle =
        WATER.withSignals(
            List.of(
                new VehicleSignal(
                    "transmission_fluid_temp",
                    0x1E1C,
                    "7E1",
                    0,
                    16,
                    false,
                    0.0625,
                    -40,
                    "degC",
                    -40,
                    215)));

    assertThat(intake(vehicle).samples(reading("7E9", "22.1E1C.0", 91.5, 1), CLOCK))
        .containsExactly(new Sample(Channels.TRANSMISSION_FLUID_TEMP, 1_000_000, 91.5));
  }

  @Test
  void whatNobodyWantsGivesNoSample() {
    assertThat(intake(WATER).samples(reading("7E8", "01.A6", 98765.4, 1), CLOCK)).isEmpty();
  }

  @Test
  void everyUsualSourceFeedsAKnownChannel() {
    SensorRoles roles = new SensorRoles(WATER);

    assertThat(roles.standardSignals()).hasSizeGreaterThan(25);
    assertThat(roles.standardSignals())
        .allSatisfy(
            key ->
                assertThat(roles.channelsOf(key))
                    .extracting(Channel::id)
                    .allSatisfy(id -> assertThat(Channels.find(id)).isPresent()));
  }

  private static ReadingIntake intake(Vehicle vehicle) {
    return new ReadingIntake(new SensorRoles(vehicle));
  }

  private static Reading reading(String unit, String key, double value, double seconds) {
    return new Reading(
        unit, new Signal(key, key, "1"), value, START_NANOS + Math.round(seconds * 1e9));
  }
}
