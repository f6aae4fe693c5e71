package steadypull.road.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.PositionFix;
import steadypull.road.RoadLoad;
import steadypull.road.StandardAtmosphere;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.grade.RoadSecond;
import steadypull.road.grade.Traction;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/**
 * Weighs a rig by a trip that it has driven: what the wheels gave against what was climbed and
 * gained in speed. The mass that somebody entered has no say in it. One thread.
 *
 * <p>Keeps some 100 octets for each second until it is finished.
 */
public final class RigWeighing {
  private static final long SECOND_MICROS = 1_000_000;
  private static final double LONGEST_STEP_SECONDS = 3;

  /** Where nobody has entered a mass, the search begins here; the trip decides where it ends. */
  private static final double FIRST_KILOGRAMS = 6000;

  private final DerivedChannels derived;
  private final RoadLoad assumed;
  private final LatestSamples located = new LatestSamples();
  private final PlaceWatch places = new PlaceWatch();
  private final List<HeadStep> steps = new ArrayList<>();
  private Optional<RoadSecond> before = Optional.empty();
  private long nextMicros = SECOND_MICROS;

  /** Weighs the rig of one vehicle. */
  public RigWeighing(Vehicle vehicle) {
    Vehicle counted = vehicle.withRig(counted(vehicle.rig()));
    derived = new DerivedChannels(counted);
    assumed = RoadLoad.of(counted.rig(), 1).orElseThrow();
  }

  /** Takes a measured sample; times do not run backwards. Derived ones are left aside. */
  public void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      tick();
    }
    if (Channels.located().contains(sample.channel())) {
      located.accept(sample);
    }
    if (!Channels.derived().contains(sample.channel())) {
      derived.accept(sample);
    }
  }

  /** What the whole trip tells. */
  public RigFinding finish() {
    tick();
    if (steps.stream().noneMatch(HeadStep::isPulled)) {
      return new RigFinding.CannotTell(RigFinding.Reason.NO_TORQUE);
    }
    if (steps.stream().noneMatch(step -> step.headMetres().isPresent())) {
      return new RigFinding.CannotTell(RigFinding.Reason.NO_ALTITUDE);
    }
    return places.isOnRollers()
        ? new RigFinding.CannotTell(RigFinding.Reason.ON_ROLLERS)
        : MassSearch.among(steps, assumed);
  }

  private void tick() {
    Optional<RoadSecond> now = derived.look(nextMicros);
    if (now.isPresent() && before.isPresent()) {
      HeadStep step = step(before.get(), now.get());
      steps.add(step);
      places.accept(step.metres(), PositionFix.ofSecondBefore(located, nextMicros));
    }
    before = now;
    nextMicros += SECOND_MICROS;
  }

  private static HeadStep step(RoadSecond from, RoadSecond to) {
    double span = to.seconds() - from.seconds();
    double speed = (from.metresPerSecond() + to.metresPerSecond()) / 2;
    boolean isPulled = span <= LONGEST_STEP_SECONDS && isPulling(from) && isPulling(to);
    return new HeadStep(
        to.seconds(),
        span,
        speed * span,
        isPulled,
        isPulled ? (watts(from) + watts(to)) / 2 * span : 0,
        isPulled ? to.traction().orElseThrow().load().dragNewtons(speed) * speed * span : 0,
        head(to));
  }

  private static boolean isPulling(RoadSecond second) {
    return second.traction().filter(Traction::isPulling).isPresent();
  }

  private static double watts(RoadSecond second) {
    return second.traction().orElseThrow().newtons() * second.metresPerSecond();
  }

  private static OptionalDouble head(RoadSecond second) {
    if (second.altitudeMetres().isEmpty()) {
      return OptionalDouble.empty();
    }
    double speed = second.metresPerSecond();
    return OptionalDouble.of(
        second.altitudeMetres().getAsDouble()
            + RoadLoad.ROTATING_MASS_FACTOR * speed * speed / 2 / StandardAtmosphere.GRAVITY);
  }

  private static Rig counted(Rig rig) {
    return rig.massKilograms().isPresent()
        ? rig
        : rig.withMasses(OptionalDouble.of(FIRST_KILOGRAMS), OptionalDouble.empty());
  }
}
