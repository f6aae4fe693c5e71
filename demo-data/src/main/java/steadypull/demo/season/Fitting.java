package steadypull.demo.season;

import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** What the workshop has done to a charge-air water circuit. */
enum Fitting {
  AS_BUILT(""),
  MORE_COOLANT("expansion tank in the charge circuit, 4.9 L more coolant"),
  SECOND_EXCHANGER("second radiator in the charge circuit"),
  BOTH("second radiator and 4.9 L more coolant in the charge circuit"),
  ADDITIVE("wetting agent in the charge circuit's coolant");

  private static final double MORE_LITRES = 4.9;
  private static final double MORE_CONDUCTANCE = 1.35; // estimated, a core of a third the face
  private static final double CORE_LITRES = 0.5; // estimated
  private static final double CORE_J_PER_K = 1200; // aluminium, estimated

  private final String words;

  Fitting(String words) {
    this.words = words;
  }

  /** For people; empty where nothing has been changed. */
  String words() {
    return words;
  }

  Rig fitTo(Rig rig) {
    return switch (this) {
      case AS_BUILT, ADDITIVE -> rig;
      case MORE_COOLANT -> withMoreCoolant(rig);
      case SECOND_EXCHANGER -> withSecondExchanger(rig);
      case BOTH -> withSecondExchanger(withMoreCoolant(rig));
    };
  }

  private static Rig withMoreCoolant(Rig rig) {
    return more(rig, RigTrait.CHARGE_CIRCUIT_LITRES, MORE_LITRES);
  }

  private static Rig withSecondExchanger(Rig rig) {
    Rig larger =
        rig.with(
            RigTrait.CHARGE_RADIATOR_W_PER_K,
            rig.of(RigTrait.CHARGE_RADIATOR_W_PER_K) * MORE_CONDUCTANCE);
    return more(
        more(larger, RigTrait.CHARGE_CIRCUIT_LITRES, CORE_LITRES),
        RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K,
        CORE_J_PER_K);
  }

  private static Rig more(Rig rig, RigTrait trait, double amount) {
    return rig.with(trait, rig.of(trait) + amount);
  }
}
