package steadypull.vehicle.role;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.role.RoleFinding.Confidence;

/** What is told, and what is honestly not told, where sensors are missing or broken. */
class RoleSurveyTest {
  private static final double STUCK_CELSIUS = 90;

  @Test
  void aDriveUpALongGradeTellsEveryPlaceOfTheDemoVehicle() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual());

    assertThat(survey.suspects()).isEmpty();
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_IN)).contains("01.75.2");
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.77.1");
    assertThat(proposed(survey, Channels.CHARGE_COOLANT_TEMP)).contains("01.67.2");
    assertThat(proposed(survey, Channels.EXHAUST_TEMP_BEFORE_TURBINE)).contains("01.78.1");
    assertThat(proposed(survey, Channels.EXHAUST_TEMP_AFTER_TURBINE)).contains("01.78.2");
    assertThat(survey.findings())
        .as("the engine's coolant has a parameter of its own")
        .extracting(RoleFinding::channel)
        .doesNotContain(Channels.ENGINE_COOLANT_TEMP);
  }

  @Test
  void theReasonNamesTheFiguresThatWereSeen() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual());

    assertThat(reason(survey, Channels.CHARGE_AIR_TEMP_IN))
        .isInstanceOfSatisfying(
            Reason.HotAsCompressed.class,
            hot -> {
              assertThat(hot.celsius()).isBetween(hot.compressedCelsius(), 200.0);
              assertThat(hot.manifoldKilopascals()).isBetween(180.0, 310.0);
              assertThat(hot.outsideCelsius()).isBetween(30.0, 39.0);
            });
    assertThat(reason(survey, Channels.CHARGE_AIR_TEMP_OUT))
        .isInstanceOfSatisfying(
            Reason.CooledAfterCompression.class,
            cooled ->
                assertThat(cooled.celsius())
                    .isBetween(cooled.outsideCelsius(), cooled.compressedCelsius()));
  }

  /** Heywood's compressor formula with k = 1.4: 25 degC at ratio 2 without loss, by hand. */
  @Test
  void theLeastHeatOfCompressionIsThatOfACompressorWithoutLoss() {
    // 298.15 K * (2^(0.4/1.4) - 1) = 298.15 * 0.21901 = 65.3 K
    assertThat(new Moment(25, 200, 100, true).compressionKelvin())
        .isCloseTo(65.3, org.assertj.core.data.Offset.offset(0.05));
    assertThat(new Moment(25, 90, 100, true).compressionKelvin()).isZero();
  }

  @Test
  void aSensorThatStandsStillIsLeftOutAndItsPlaceStaysUntold() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().wire("01.77.1", drive -> STUCK_CELSIUS));

    assertThat(survey.suspects())
        .containsExactly(new Suspect("01.77.1", new Suspect.Stuck(STUCK_CELSIUS)));
    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains(new Missing.NoneBetween());
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_IN)).contains("01.75.2");
  }

  /** Stuck hotter than everything: it must not pass for the air before the cooler. */
  @Test
  void aSensorStuckAtAHighReadingIsNotTakenForCompressedAir() {
    RoleSurvey survey =
        waterCooled(WiredVehicle.usual().cut("01.75.2").wire("01.77.2", drive -> 170));

    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_IN))
        .containsInstanceOf(Missing.NoneHotEnough.class);
  }

  /** It moves, but with the clock and not with the engine. */
  @Test
  void aHotSensorThatDoesNotFollowBoostIsNotTakenForCompressedAir() {
    RoleSurvey survey =
        waterCooled(
            WiredVehicle.usual()
                .cut("01.75.2")
                .wire("01.68.1", drive -> 170 + 8 * Math.sin(drive.seconds() / 7)));

    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_IN)).isEmpty();
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.77.1");
  }

  @Test
  void withoutASensorBeforeTheCoolerTheOneBehindItIsNotTakenForIt() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().cut("01.75.2"));

    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_IN))
        .containsInstanceOf(Missing.NoneHotEnough.class);
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.77.1");
  }

  @Test
  void withoutASensorBehindTheCoolerTheIntakeIsNotTakenForIt() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().cut("01.77.1"));

    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains(new Missing.NoneBetween());
  }

  @Test
  void anIntakeSensorInTheManifoldStandsBackBehindTheChargeAirParameter() {
    RoleSurvey survey =
        waterCooled(
            WiredVehicle.usual().wire("01.0F", drive -> drive.read(Sensor.CHARGE_AIR_OUT) + 2));

    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.77.1");
    assertThat(confidence(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains(Confidence.LIKELY);
  }

  @Test
  void whereOnlyTheIntakeSensorSitsBehindTheCoolerItIsProposed() {
    RoleSurvey survey =
        waterCooled(WiredVehicle.usual().cut("01.77.1").wire("01.0F", Sensor.CHARGE_AIR_OUT));

    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.0F");
  }

  @Test
  void beforeAMinuteOfBoostItIsSaidHowMuchWasSeen() {
    Drive drive = grade();
    SensorEvidence early = WiredVehicle.usual().drive(drive, SensorEvidence.none(), 150);
    RoleSurvey survey = RoleSurvey.of(early, CoolingLayout.WATER_TO_AIR);

    assertThat(survey.proposals()).isEmpty();
    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_IN))
        .containsInstanceOf(Missing.MoreBoost.class);
  }

  @Test
  void ofAVehicleThatWasNeverHeardNothingIsTold() {
    RoleSurvey survey = RoleSurvey.of(SensorEvidence.none(), CoolingLayout.AIR_TO_AIR);

    assertThat(survey.proposals()).isEmpty();
    assertThat(missing(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains(new Missing.NoSensor());
  }

  @Test
  void withoutAnOutsideSensorThePlacesAreToldAllTheSame() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().without(Channels.AMBIENT_AIR_TEMP));

    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_IN)).contains("01.75.2");
    assertThat(proposed(survey, Channels.CHARGE_AIR_TEMP_OUT)).contains("01.77.1");
  }

  @Test
  void withoutManifoldPressureNothingIsTold() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().without(Channels.MANIFOLD_PRESSURE));

    assertThat(survey.proposals()).isEmpty();
  }

  @Test
  void aSecondSensorOfTheSameWaterIsNoCircuit() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().wire("01.67.2", Sensor.ENGINE_COOLANT));

    assertThat(missing(survey, Channels.CHARGE_COOLANT_TEMP)).contains(new Missing.NoOtherWater());
  }

  @Test
  void aCircuitOfItsOwnIsOnlyHintedAtWhereTheVehicleSaysAirToAir() {
    SensorEvidence seen = WiredVehicle.usual().drive(grade());
    RoleSurvey survey = RoleSurvey.of(seen, CoolingLayout.AIR_TO_AIR);

    assertThat(missing(survey, Channels.CHARGE_COOLANT_TEMP))
        .containsInstanceOf(Missing.LayoutSaysAir.class);
  }

  @Test
  void oneExhaustSensorAloneDoesNotTellItsSideOfTheTurbine() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().cut("01.78.2"));

    for (Channel channel :
        List.of(Channels.EXHAUST_TEMP_BEFORE_TURBINE, Channels.EXHAUST_TEMP_AFTER_TURBINE)) {
      assertThat(missing(survey, channel)).contains(new Missing.OnlyOneExhaust("01.78.1"));
    }
  }

  /** Two sensors of two banks in one place must not be torn apart. */
  @Test
  void exhaustSensorsThatReadAlikeAreOnOneSideOfTheTurbine() {
    RoleSurvey survey =
        waterCooled(
            WiredVehicle.usual()
                .cut("01.78.2")
                .wire("01.79.1", drive -> drive.read(Sensor.EXHAUST_BEFORE_TURBINE) - 6));

    assertThat(missing(survey, Channels.EXHAUST_TEMP_BEFORE_TURBINE))
        .containsInstanceOf(Missing.NoTurbineBetween.class);
  }

  /** After the turbine and after a filter: cooler by as much as a turbine takes, but slow. */
  @Test
  void aSlowSensorIsNotTakenForTheFarSideOfTheTurbine() {
    SlowMean filter = new SlowMean(200);
    RoleSurvey survey =
        waterCooled(
            WiredVehicle.usual()
                .wire("01.78.1", Sensor.EXHAUST_AFTER_TURBINE)
                .wire(
                    "01.78.2",
                    drive ->
                        filter.next(
                            Math.round(drive.seconds() * 1e6),
                            drive.read(Sensor.EXHAUST_AFTER_TURBINE) - 110)));

    assertThat(missing(survey, Channels.EXHAUST_TEMP_BEFORE_TURBINE))
        .containsInstanceOf(Missing.NoTurbineBetween.class);
  }

  @Test
  void sensorsThatAreAskedForSeldomAreToldAsWell() {
    RoleSurvey survey = waterCooled(WiredVehicle.usual().askedEvery(10));

    assertThat(survey.proposals()).hasSize(5);
  }

  private static RoleSurvey waterCooled(WiredVehicle vehicle) {
    return RoleSurvey.of(vehicle.drive(grade()), CoolingLayout.WATER_TO_AIR);
  }

  private static Drive grade() {
    return DemoWorld.drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 1);
  }

  private static Optional<RoleFinding.Proposed> proposal(RoleSurvey survey, Channel channel) {
    return survey.proposals().stream()
        .filter(finding -> finding.channel().equals(channel))
        .findFirst();
  }

  private static Optional<String> proposed(RoleSurvey survey, Channel channel) {
    return proposal(survey, channel).map(RoleFinding.Proposed::signalKey);
  }

  private static Optional<Confidence> confidence(RoleSurvey survey, Channel channel) {
    return proposal(survey, channel).map(RoleFinding.Proposed::confidence);
  }

  private static Reason reason(RoleSurvey survey, Channel channel) {
    return proposal(survey, channel).orElseThrow().reason();
  }

  private static Optional<Missing> missing(RoleSurvey survey, Channel channel) {
    return survey.findings().stream()
        .filter(finding -> finding.channel().equals(channel))
        .filter(RoleFinding.CannotTell.class::isInstance)
        .map(finding -> ((RoleFinding.CannotTell) finding).missing())
        .findFirst();
  }
}
