package steadypull.compare;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import steadypull.channel.Channel;

/**
 * The state at the onset of a run, by which a rival would tear a comparison apart. Immutable.
 *
 * @param temperaturesCelsius of coolants, oils, charge air, intake, as far as they were heard
 * @param outsideCelsius outside air (or the cell's, on a dynamometer)
 * @param pressureKilopascals of the outside air
 * @param secondsSinceLastPull since the load of the pull before it ended; empty: none before it in
 *     the trip, or unknown
 * @param gear mostly driven in the run; empty if it cannot be told
 * @param speedKilometresPerHour mean of the run
 * @param powerKilowatts mean at the wheels, or at the engine where the wheels' is not known
 * @param converter whether it was locked
 * @param airConditioning whether it was on
 * @param regeneration whether the particulate filter was regenerated in the run
 * @param fan whether the fan was engaged; as somebody noted it, no channel tells
 * @param thermostat of the engine, in the second half of the load
 */
public record RunStart(
    Map<Channel, Double> temperaturesCelsius,
    OptionalDouble outsideCelsius,
    OptionalDouble pressureKilopascals,
    OptionalDouble secondsSinceLastPull,
    OptionalInt gear,
    OptionalDouble speedKilometresPerHour,
    OptionalDouble powerKilowatts,
    Known converter,
    Known airConditioning,
    Known regeneration,
    Known fan,
    Thermostat thermostat) {
  public RunStart {
    temperaturesCelsius = Map.copyOf(temperaturesCelsius);
  }

  /** Whether something was so. A closed set; "could not tell" is a case of its own. */
  public enum Known {
    YES,
    NO,
    UNKNOWN
  }
}
