package steadypull.demo.road;

import java.time.Duration;
import java.util.Objects;
import steadypull.demo.plant.Rig;

/**
 * A drive that anyone can repeat. Immutable.
 *
 * @param name lower-case words joined by hyphens
 * @param sentence what happens, one sentence
 * @param duration from the first byte to the engine being switched off
 * @param vehicleName the name in the vehicle file
 * @param vehicleFile name of the vehicle file among this module's resources
 * @param rig the vehicle as the world has it
 * @param course where and how it is driven
 */
public record Scenario(
    String name,
    String sentence,
    Duration duration,
    String vehicleName,
    String vehicleFile,
    Rig rig,
    Course course) {
  public Scenario {
    Objects.requireNonNull(sentence);
    Objects.requireNonNull(vehicleName);
    Objects.requireNonNull(vehicleFile);
    Objects.requireNonNull(rig);
    Objects.requireNonNull(course);
    if (!name.matches("[a-z]+(-[a-z]+)*")) {
      throw new IllegalArgumentException(
          "A scenario's name is lower-case words joined by hyphens, found " + name);
    }
    if (!duration.isPositive()) {
      throw new IllegalArgumentException("A scenario lasts a while, found " + duration);
    }
  }

  /** The same drive with another vehicle. */
  public Scenario with(Rig other) {
    return new Scenario(name, sentence, duration, vehicleName, vehicleFile, other, course);
  }

  /** The same vehicle on another course. */
  public Scenario with(Course other) {
    return new Scenario(name, sentence, duration, vehicleName, vehicleFile, rig, other);
  }
}
