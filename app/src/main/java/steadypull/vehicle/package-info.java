/**
 * A vehicle and its rig: cooling layout, thermal limits and where each limit comes from, sensor
 * roles and the vehicle's own signals. Immutable values that the store keeps and every room above
 * reads; {@link steadypull.vehicle.VehicleJson} is their text form.
 */
@NullMarked
package steadypull.vehicle;

import org.jspecify.annotations.NullMarked;
