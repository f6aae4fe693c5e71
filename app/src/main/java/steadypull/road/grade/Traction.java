package steadypull.road.grade;

import steadypull.road.RoadLoad;

/**
 * What pulls the rig, and what holds it back. Immutable.
 *
 * @param newtons at the wheels; negative where the vehicle drives the engine
 * @param isPulling whether the engine pulls so much that nobody brakes meanwhile
 * @param load the rig's road load in the present air
 */
public record Traction(double newtons, boolean isPulling, RoadLoad load) {
  /** Newtons for each kilogram of the rig. */
  double newtonsPerKilogram() {
    return newtons / load.massKilograms();
  }
}
