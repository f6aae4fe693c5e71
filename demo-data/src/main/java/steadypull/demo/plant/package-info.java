/**
 * The plant: a towing vehicle as the world has it. Longitudinal dynamics, turbocharger, charge
 * cooler, engine coolant, gearbox, sensors, and an engine control that derates. Shares no code and
 * no constants with the models that the program believes in.
 */
@NullMarked
package steadypull.demo.plant;

import org.jspecify.annotations.NullMarked;
