package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

class VehicleJsonTest {
  private static final List<CoolingLayout> LAYOUTS = List.of(CoolingLayout.values());
  private static final List<Provenance.Kind> KINDS = List.of(Provenance.Kind.values());
  private static final String SMALLEST =
      "{\"steadypull_vehicle\":1,\"name\":\"Wattle 2\",\"layout\":\"air-to-air\"}";

  @Test
  void whatIsWrittenIsReadBackTheSame() throws VehicleFileException {
    SplittableRandom random = new SplittableRandom(20260715);
    for (int round = 0; round < 200; round++) {
      Vehicle vehicle = anyVehicle(random);

      assertThat(VehicleJson.read(VehicleJson.write(vehicle), "round " + round)).isEqualTo(vehicle);
    }
  }

  @Test
  void aFullFileIsUnderstood() throws VehicleFileException {
    Vehicle vehicle =
        VehicleJson.read(
            """
            {"steadypull_vehicle":1,"name":"Wattle 2","layout":"water-to-air",
             "limits":[{"channel":"charge_air_temp_out","limit_degC":101.5,"provenance":"workshop",
                        "note":"dynamometer, March"}],
             "rig":{"mass_kg":7800,"trailer_mass_kg":3200},
             "driveline":{"gear_ratios":[4.7,3.1,2.1],"axle_ratio":3.9},
             "advisable_speed_km_h":[50,85],
             "sensor_roles":[{"channel":"charge_air_temp_out","signal":"01.77.1"}],
             "signals":[{"channel":"transmission_fluid_temp","identifier":"1E1C","header":"7E1",
                         "first_bit":0,"bit_length":16,"signed":false,"scale":0.0625,"offset":-40,
                         "unit":"degC","range":[-40,215]}]}
            """,
            "wattle.json");

    assertThat(vehicle.limits()).hasSize(1);
    assertThat(vehicle.limit(Channels.CHARGE_AIR_TEMP_OUT))
        .contains(
            new Limit(
                Channels.CHARGE_AIR_TEMP_OUT,
                101.5,
                new Provenance(Provenance.Kind.WORKSHOP, "dynamometer, March")));
    assertThat(vehicle.rig().massKilograms()).hasValue(7800);
    assertThat(vehicle.rig().trailerMassKilograms()).hasValue(3200);
    assertThat(vehicle.rig().vehicleMassKilograms()).hasValue(4600);
    assertThat(vehicle.rig().tyreRadiusMetres()).isEmpty();
    assertThat(vehicle.driveline().gearRatios()).containsExactly(4.7, 3.1, 2.1);
    assertThat(vehicle.speeds()).isEqualTo(new SpeedRange(50, 85));
    assertThat(vehicle.sources())
        .containsExactly(new SignalSource("charge_air_temp_out", "01.77.1"));
    assertThat(vehicle.signals().getFirst().identifier()).isEqualTo(0x1E1C);
  }

  @Test
  void withoutLimitsTheLayoutsDefaultsHold() throws VehicleFileException {
    assertThat(VehicleJson.read(SMALLEST, "wattle.json"))
        .isEqualTo(Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR));
  }

  @Test
  void anEmptyListOfLimitsMeansNoLimits() throws VehicleFileException {
    String text = SMALLEST.replace("}", ",\"limits\":[]}");

    assertThat(VehicleJson.read(text, "wattle.json").limits()).isEmpty();
  }

  @Test
  void aSlipInAKeyIsRefusedWithItsPlaceAndTheLikelyKey() {
    assertThatThrownBy(
            () ->
                VehicleJson.read(
                    """
                    {"steadypull_vehicle":1,"name":"Wattle 2","layout":"air-to-air",
                     "limits":[{"channel":"engine_oil_temp","limit_degc":125,"provenance":"owner"}]}
                    """,
                    "wattle.json"))
        .isInstanceOf(VehicleFileException.class)
        .hasMessageContaining("wattle.json, line 2, column 41, limits[0].limit_degc")
        .hasMessageContaining("found an unknown key")
        .hasMessageContaining("Did you mean limit_degC?");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"name\":\"A\"|\"name\":7|line 1, column 32, name: expected text, found the number 7.",
        "\"name\":\"A\"|\"nam\":\"A\"|nam: expected one of steadypull_vehicle, name,",
        "air-to-air|air to air|layout: expected \"air-to-air\" or \"water-to-air\", found",
        "vehicle\":1|vehicle\":2|expected 1, the version of a vehicle file, found the number 2.",
        "\"name\":\"A\"|\"name\":\" \"|the whole file: A vehicle has a name",
        "\"name\":\"A\"|\"name\":\"A\",\"name\":\"B\"|Duplicate field 'name'",
        "\"name\":\"A\"|\"name\":\"A\",\"rig\":{\"mass_kg\":7}|rig: mass_kg lies between 300.0",
        "\"name\":\"A\"|\"name\":\"A\",\"rig\":{\"mass_kg\":900,\"trailer_mass_kg\":900}|rig:"
            + " trailer_mass_kg lies under mass_kg, which is both together, 900.0; found 900.0.",
        "\"name\":\"A\"|\"name\":\"A\",\"rig\":{\"trailer_mass_kg\":-1}|trailer_mass_kg lies"
            + " between 0.0 and 50000.0",
        "\"name\":\"A\"|\"name\":\"A\",\"rig\":{\"mass_kg\":null}|rig.mass_kg: expected a number",
        "\"name\":\"A\"|\"name\":\"A\",\"rig\":{\"mass_kg\":1e999}|expected a finite number",
        "\"name\":\"A\"|\"name\":\"A\",\"advisable_speed_km_h\":[60]|expected a list of two"
            + " numbers",
        "\"name\":\"A\"|\"name\":\"A\",\"limits\":{}|limits: expected a list, found an object",
        "\"name\":\"A\"|\"name\":\"A\",\"limits\":[4]|limits[0]: expected an object, found the"
            + " number",
        "}|} {|expected the end of the file, found more text",
        "}|`` |line 1",
      })
  void everyFaultIsRefusedInItsOwnWords(String good, String bad, String said) {
    String text = "{\"steadypull_vehicle\":1,\"name\":\"A\",\"layout\":\"air-to-air\"}";

    assertThatThrownBy(() -> VehicleJson.read(text.replace(good, bad), "a.json"))
        .isInstanceOf(VehicleFileException.class)
        .hasMessageStartingWith("a.json, line 1, column ")
        .hasMessageContaining(said);
  }

  @Test
  void twoLimitsOfOneChannelAreRefused() {
    String limit = "{\"channel\":\"engine_oil_temp\",\"limit_degC\":125,\"provenance\":\"owner\"}";

    assertThatThrownBy(
            () ->
                VehicleJson.read(
                    SMALLEST.replace("}", ",\"limits\":[" + limit + "," + limit + "]}"), "a.json"))
        .hasMessageContaining("limits[1].channel: expected one limit for each channel");
  }

  /** A file of before there was a mass of its own for the trailer. */
  @Test
  void aRigFileWithoutATrailersMassIsReadAsBefore() throws VehicleFileException {
    Rig rig = VehicleJson.readRig("{\"mass_kg\":7800,\"tyre_radius_m\":0.4}", "rig.json");

    assertThat(rig.massKilograms()).hasValue(7800);
    assertThat(rig.trailerMassKilograms()).isEmpty();
    assertThat(rig.vehicleMassKilograms()).isEmpty();
  }

  @Test
  void aRigFileMayBeEmptyButNotMisspelt() throws VehicleFileException {
    assertThat(VehicleJson.readRig("{}", "rig.json")).isEqualTo(Rig.unknown());
    assertThatThrownBy(() -> VehicleJson.readRig("{\"mass\":7800}", "rig.json"))
        .hasMessageContaining("rig.json, line 1, column 2, mass")
        .hasMessageContaining("Did you mean mass_kg, trailer_mass_kg?");
  }

  private static Vehicle anyVehicle(SplittableRandom random) {
    Vehicle vehicle =
        Vehicle.unknown(
                "Wattle \"" + random.nextInt() + "\" \u00e9\n", LAYOUTS.get(random.nextInt(2)))
            .withRig(anyRig(random))
            .withDriveline(anyDriveline(random))
            .withSpeeds(new SpeedRange(random.nextDouble(20, 60), random.nextDouble(61, 130)))
            .withCap(anyCap(random));
    List<SignalSource> sources = new ArrayList<>();
    List<VehicleSignal> signals = new ArrayList<>();
    for (int count = random.nextInt(3); count > 0; count--) {
      sources.add(new SignalSource("engine_oil_temp_" + count, "22.1E1C." + count));
      signals.add(anySignal(random));
      vehicle = vehicle.withLimit(anyLimit(random));
    }
    return vehicle.withSources(sources).withSignals(signals);
  }

  private static PressureCap anyCap(SplittableRandom random) {
    return random.nextBoolean()
        ? PressureCap.USUAL
        : new PressureCap(
            random.nextDouble(0, 3),
            new Provenance(KINDS.get(random.nextInt(4)), "cap " + random.nextInt()));
  }

  private static Limit anyLimit(SplittableRandom random) {
    return new Limit(
        new Channel("own_temp_" + random.nextInt(3), "degC"),
        random.nextDouble(-40, 1200),
        new Provenance(KINDS.get(random.nextInt(4)), "note, \\ " + random.nextInt()));
  }

  private static Rig anyRig(SplittableRandom random) {
    return new Rig(
        maybe(random, 30_000, 60_000),
        maybe(random, 0, 30_000),
        maybe(random, 0.3, 15),
        maybe(random, 0.003, 0.05),
        maybe(random, 0.2, 0.8));
  }

  private static Driveline anyDriveline(SplittableRandom random) {
    List<Double> ratios = random.doubles(random.nextInt(9), 0.1, 30).boxed().toList();
    return new Driveline(ratios, maybe(random, 0.5, 30), maybe(random, 500, 10_000))
        .withTyreSize(
            random.nextBoolean()
                ? Optional.of(TyreSize.of("LT275/70R18 123/120S"))
                : Optional.empty());
  }

  private static VehicleSignal anySignal(SplittableRandom random) {
    return new VehicleSignal(
        "transmission_fluid_temp",
        random.nextInt(0x10000),
        "7E1",
        random.nextInt(64),
        random.nextInt(1, 33),
        random.nextBoolean(),
        random.nextDouble(0.001, 10),
        random.nextInt(-50, 50),
        random.nextBoolean() ? "degC" : "degF",
        -40,
        random.nextDouble(0, 300));
  }

  private static OptionalDouble maybe(SplittableRandom random, double lowest, double highest) {
    return random.nextBoolean()
        ? OptionalDouble.of(random.nextDouble(lowest, highest))
        : OptionalDouble.empty();
  }
}
