package steadypull.thermal;

/**
 * How a load that is only supposed differs, for cores and compressor, from the one that goes on.
 * What was learnt of fan and radiator holds at the engine speed of that one, so that nothing
 * learnt, and no other forecast, is touched. Immutable.
 *
 * @param fanShare what the fan gives, against what was learnt, above 0
 * @param coolantShare conductance of the radiator by the flow of coolant, likewise
 * @param coolerKelvin that the air before the radiators is cooler than was learnt, 0 or more
 * @param swallowedShare of what an engine at this speed swallows, that is counted on, above 0
 */
record CoreChange(
    double fanShare, double coolantShare, double coolerKelvin, double swallowedShare) {
  /** As it was learnt. */
  static final CoreChange NONE = new CoreChange(1, 1, 0, 1);

  /**
   * What a fan gives against the speed of its engine. Flow goes with the speed of a fan (affinity
   * laws, any handbook of fans; from memory), conductance with flow to 0.6 ({@link Load}); but a
   * viscous clutch slips the more the faster it turns, and an electric fan gains nothing: half of
   * it (estimated).
   */
  private static final double FAN_EXPONENT = 0.3;

  /**
   * Conductance of a radiator against the speed of the coolant pump: the water's side grows with
   * flow to 0.8 (Dittus and Boelter; any handbook of heat transfer), and is an eighth of the whole
   * resistance, for the air's side decides (estimated).
   */
  private static final double COOLANT_EXPONENT = 0.1;

  /**
   * An engine that turns faster than it was learnt at.
   *
   * @param turning engine speed against that at which it was learnt, above 0
   * @param breathing its air flow against that, above 0; boost is not counted on to fall
   */
  static CoreChange turning(double turning, double breathing) {
    return new CoreChange(
        Math.pow(turning, FAN_EXPONENT),
        Math.pow(turning, COOLANT_EXPONENT),
        0,
        breathing / turning);
  }

  /** An engine that turns slower, as its maps have it; what it swallows is as learnt. */
  static CoreChange slower(double turning) {
    return new CoreChange(
        Math.pow(turning, FAN_EXPONENT), Math.pow(turning, COOLANT_EXPONENT), 0, 1);
  }

  /** Air before the radiators that is cooler than was learnt, K. */
  static CoreChange cooler(double kelvin) {
    return new CoreChange(1, 1, kelvin, 1);
  }
}
