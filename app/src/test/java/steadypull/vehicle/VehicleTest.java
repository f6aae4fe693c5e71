package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

class VehicleTest {
  private static final Provenance OWNER = new Provenance(Provenance.Kind.OWNER, "handbook");

  // Cautious default limits: common practice, no source.
  @Test
  void defaultLimitsFollowTheCoolingLayout() {
    assertThat(degrees(DefaultLimits.of(CoolingLayout.AIR_TO_AIR)))
        .isEqualTo(
            Map.of(
                "engine_coolant_temp", 112.0,
                "engine_oil_temp", 130.0,
                "transmission_fluid_temp", 120.0,
                "exhaust_temp_before_turbine", 720.0,
                "charge_air_temp_out", 85.0));
    assertThat(degrees(DefaultLimits.of(CoolingLayout.WATER_TO_AIR)))
        .isEqualTo(
            Map.of(
                "engine_coolant_temp", 112.0,
                "engine_oil_temp", 130.0,
                "transmission_fluid_temp", 120.0,
                "exhaust_temp_before_turbine", 720.0,
                "charge_coolant_temp", 100.0,
                "charge_air_temp_out", 105.0));
  }

  @Test
  void defaultsSayThatTheyAreDefaults() {
    assertThat(DefaultLimits.of(CoolingLayout.WATER_TO_AIR).values())
        .allMatch(limit -> limit.provenance().kind() == Provenance.Kind.DEFAULT);
  }

  @Test
  void aHotChargeCostsPowerAndAHotFluidBreaksSomething() {
    assertThat(Consequence.of(Channels.CHARGE_AIR_TEMP_OUT)).isEqualTo(Consequence.COSTS_POWER);
    assertThat(Consequence.of(Channels.CHARGE_COOLANT_TEMP)).isEqualTo(Consequence.COSTS_POWER);
    assertThat(Consequence.of(Channels.ENGINE_OIL_TEMP)).isEqualTo(Consequence.BREAKS);
    assertThat(Consequence.of(Channels.EXHAUST_TEMP_BEFORE_TURBINE)).isEqualTo(Consequence.BREAKS);
    assertThat(Consequence.of(new Channel("gearbox_pan_temp", "degC")))
        .isEqualTo(Consequence.BREAKS);
  }

  @Test
  void anotherLayoutKeepsWhatSomebodyHasSet() {
    Vehicle vehicle =
        Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR)
            .withLimit(new Limit(Channels.ENGINE_OIL_TEMP, 121, OWNER))
            .withLayout(CoolingLayout.AIR_TO_AIR);

    assertThat(vehicle.limit(Channels.CHARGE_COOLANT_TEMP)).isEmpty();
    assertThat(vehicle.limit(Channels.CHARGE_AIR_TEMP_OUT)).map(Limit::celsius).contains(85.0);
    assertThat(vehicle.limit(Channels.ENGINE_OIL_TEMP)).map(Limit::celsius).contains(121.0);
  }

  @Test
  void aNewLimitTakesThePlaceOfTheOldOne() {
    Vehicle before = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
    Vehicle after = before.withLimit(new Limit(Channels.ENGINE_COOLANT_TEMP, 108, OWNER));

    assertThat(after.limits().keySet()).containsExactlyElementsOf(before.limits().keySet());
    assertThat(after.limit(Channels.ENGINE_COOLANT_TEMP)).map(Limit::celsius).contains(108.0);
  }

  @Test
  void aLimitBelongsToATemperature() {
    assertThatThrownBy(() -> new Limit(Channels.ENGINE_SPEED, 100, OWNER))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("engine_speed[r/min]");
  }

  @Test
  void aSignalMustBeAbleToFeedItsChannel() {
    assertThat(signal("transmission_fluid_temp", "degF").channel())
        .isEqualTo(Channels.TRANSMISSION_FLUID_TEMP);
    assertThat(signal("gearbox_pan_temp", "degC").channel())
        .isEqualTo(new Channel("gearbox_pan_temp", "degC"));
    assertThatThrownBy(() -> signal("transmission_fluid_temp", "kPa"))
        .hasMessageContaining("unit of transmission_fluid_temp can become degC, found kPa");
  }

  private static VehicleSignal signal(String channel, String unit) {
    return new VehicleSignal(channel, 0x1E1C, "7E1", 0, 16, false, 1, 0, unit, -40, 215);
  }

  private static Map<String, Double> degrees(Map<String, Limit> limits) {
    return limits.entrySet().stream()
        .collect(Collectors.toMap(Map.Entry::getKey, entry -> entry.getValue().celsius()));
  }
}
