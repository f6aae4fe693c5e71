package steadypull.compare;

import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** What was done to the cooling. */
enum Change {
  COOLANT(true, false),
  RADIATOR(false, true),
  BOTH(true, true),
  NOTHING(false, false);

  private static final double MORE_LITRES = 5;

  /** 5 L of 50/50 coolant at 60 degC: 1.052 kg/L, 3435 J/(kg K) (ASHRAE data). */
  private static final double MORE_JOULES = 5 * 1.052 * 3435;

  private static final double MORE_CONDUCTANCE = 1.4;

  private final boolean isMoreCoolant;
  private final boolean isMoreConductance;

  Change(boolean isMoreCoolant, boolean isMoreConductance) {
    this.isMoreCoolant = isMoreCoolant;
    this.isMoreConductance = isMoreConductance;
  }

  Rig both(Rig rig) {
    return conductance(capacity(rig));
  }

  Rig capacity(Rig rig) {
    if (!isMoreCoolant) {
      return rig;
    }
    Rig filled = more(rig, RigTrait.CHARGE_CIRCUIT_LITRES, MORE_LITRES);
    return more(filled, RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, MORE_JOULES);
  }

  Rig conductance(Rig rig) {
    if (!isMoreConductance) {
      return rig;
    }
    Rig one = times(rig, RigTrait.CHARGE_RADIATOR_W_PER_K);
    return times(one, RigTrait.ENGINE_RADIATOR_W_PER_K);
  }

  private static Rig more(Rig rig, RigTrait trait, double amount) {
    return rig.with(trait, rig.of(trait) + amount);
  }

  private static Rig times(Rig rig, RigTrait trait) {
    return rig.with(trait, rig.of(trait) * MORE_CONDUCTANCE);
  }
}
