/**
 * Where is which sensor? The standard does not say which temperature sensor sits before or after
 * the charge cooler or the turbine, so that places are proposed from behaviour: {@link
 * steadypull.vehicle.role.SensorWatch} takes readings and keeps small {@link
 * steadypull.vehicle.role.SensorEvidence}, {@link steadypull.vehicle.role.RoleSurvey} makes
 * findings of it, and {@link steadypull.vehicle.role.RoleWords} says them. Nothing is applied: a
 * person confirms. No I/O, no clock; time comes with the readings.
 */
@NullMarked
package steadypull.vehicle.role;

import org.jspecify.annotations.NullMarked;
