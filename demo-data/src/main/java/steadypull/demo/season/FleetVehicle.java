package steadypull.demo.season;

import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/**
 * A customer's vehicle. Immutable.
 *
 * @param key a capital letter of the calendar
 * @param name what the workshop calls it
 * @param rig with its trailer, as built
 * @param soloKilograms mass without the trailer
 * @param soloDragArea m2 without the trailer
 * @param trailer what it tows, for people; empty if it never tows
 * @param bus what its diagnostic port speaks
 * @param hasReceiver whether a satellite receiver is on board
 * @param collectsDust whether its radiators clog over the season
 */
record FleetVehicle(
    String key,
    String name,
    Rig rig,
    double soloKilograms,
    double soloDragArea,
    String trailer,
    VehicleBus bus,
    boolean hasReceiver,
    boolean collectsDust) {

  /** The rig of a day. */
  Rig onADay(boolean tows, Fitting fitting, double cloggedShare, boolean isWarm) {
    Rig loaded =
        tows
            ? rig
            : rig.with(RigTrait.MASS_KG, soloKilograms).with(RigTrait.DRAG_AREA_M2, soloDragArea);
    return fitting
        .fitTo(loaded)
        .with(RigTrait.CLOGGED_SHARE, collectsDust ? cloggedShare : 0)
        .with(RigTrait.AIR_CONDITIONING_W, isWarm ? rig.of(RigTrait.AIR_CONDITIONING_W) : 0);
  }
}
