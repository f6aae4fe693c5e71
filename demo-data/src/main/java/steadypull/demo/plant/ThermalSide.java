package steadypull.demo.plant;

/** Everything of the vehicle that gets hot, wired together. Temperatures in degC, heats in W. */
final class ThermalSide {
  private static final double KELVIN = 273.15;
  private static final double HEAT_CAPACITY_AIR = 1012; // J/(kg K), Lemmon et al. 2000
  private static final double GEARBOX_TO_COOLANT = 60; // W/K, estimated
  private static final double SUMP_TO_AIR = 25; // W/K, estimated

  private final CoolingAir coolingAir;
  private final ChargeCooler chargeCooler;
  private final EngineCooling engineCooling;
  private final FluidStore oil;
  private final FluidStore gearbox;
  private final Exhaust exhaust;
  private final Lag compressorHousing;
  private final double inletHeating;
  private final double oilCooler;
  private final double gearboxCooler;
  private final double gearboxEfficiency;
  private double compressorIn;
  private double heatIntoCoolant;

  ThermalSide(Rig rig, WarmStart start, Surroundings around) {
    coolingAir = new CoolingAir(rig);
    chargeCooler =
        switch (rig.cooling()) {
          case WATER_TO_AIR -> new WaterChargeCooler(rig, start.chargeCoolant());
          case AIR_TO_AIR -> new AirChargeCooler(rig, start.chargeCoolant());
        };
    engineCooling = new EngineCooling(rig, start.engineCoolant());
    oil = new FluidStore(rig.of(RigTrait.OIL_HEAT_CAPACITY_J_PER_K), start.engineOil());
    gearbox = new FluidStore(rig.of(RigTrait.GEARBOX_HEAT_CAPACITY_J_PER_K), start.gearboxFluid());
    exhaust = new Exhaust(start.engineCoolant() + 150);
    inletHeating = rig.of(RigTrait.INLET_HEATING_K);
    compressorIn = around.airCelsius() + inletHeating;
    compressorHousing =
        new Lag(rig.of(RigTrait.COMPRESSOR_HOUSING_LAG_S), start.chargeCoolant() + 20);
    oilCooler = rig.of(RigTrait.OIL_COOLER_W_PER_K);
    gearboxCooler = rig.of(RigTrait.GEARBOX_COOLER_W_PER_K);
    gearboxEfficiency = rig.of(RigTrait.GEARBOX_EFFICIENCY);
  }

  void step(
      double span,
      Engine engine,
      Turbocharger turbo,
      Driveline driveline,
      double ramSpeed,
      Surroundings around) {
    double turning = driveline.engineSpeed();
    coolingAir.step(ramSpeed, engineCooling.fanSpeed(turning), around);
    double bayWarming = 0.3 * (coolingAir.frontCelsius() - around.airCelsius());
    compressorIn = around.airCelsius() + inletHeating + bayWarming;
    double outlet = compressorHousing.follow(turbo.outletKelvin() - KELVIN, span);
    chargeCooler.step(span, turbo.airFlow(), outlet, coolingAir);
    warmFluids(span, engine, driveline, turning);
    engineCooling.step(
        span, heatIntoCoolant, coolingAir.behindCelsius(chargeCooler.heatRejected()), coolingAir);
    double compressorPower =
        turbo.airFlow() * HEAT_CAPACITY_AIR * (turbo.outletKelvin() - KELVIN - compressorIn);
    exhaust.step(
        span,
        engine.heatIntoExhaust(turning),
        turbo.airFlow() + engine.fuel(),
        chargeCooler.outCelsius(),
        compressorPower);
  }

  private void warmFluids(double span, Engine engine, Driveline driveline, double turning) {
    double coolant = engineCooling.celsius();
    double air = coolingAir.frontCelsius();
    oil.step(span, engine.heatIntoOil(turning), oilCooler, coolant, SUMP_TO_AIR, air);
    gearbox.step(
        span,
        driveline.gearboxHeat(engine.delivered(), gearboxEfficiency),
        GEARBOX_TO_COOLANT,
        coolant,
        coolingAir.conductance(gearboxCooler),
        air);
    heatIntoCoolant = engine.heatIntoCoolant() + oil.heatToCoolant() + gearbox.heatToCoolant();
  }

  double compressorInCelsius() {
    return compressorIn;
  }

  double chargeAirOutCelsius() {
    return chargeCooler.outCelsius();
  }

  double fanPower(double engineSpeed) {
    return engineCooling.fanPower(engineSpeed);
  }

  PlantState.Temperatures temperatures(Surroundings around) {
    return new PlantState.Temperatures(
        around.airCelsius(),
        compressorIn,
        compressorHousing.value(),
        chargeCooler.outCelsius(),
        chargeCooler.coolantCelsius(),
        engineCooling.celsius(),
        oil.celsius(),
        gearbox.celsius(),
        exhaust.beforeCelsius(),
        exhaust.afterCelsius());
  }

  PlantState.Heat heat(Engine engine, double shaftPower) {
    return new PlantState.Heat(
        engine.heatOfFuel(),
        shaftPower,
        heatIntoCoolant,
        engineCooling.heatRejected(),
        engineCooling.heatStored(),
        chargeCooler.heatFromAir(),
        chargeCooler.heatRejected(),
        chargeCooler.heatStored(),
        engineCooling.fanEngagement());
  }
}
