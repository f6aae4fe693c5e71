package steadypull.demo.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Course;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Scenarios;

/**
 * A drive of hours on rollers in which something goes wrong every minute: every kind of fault in
 * turn, at a drawn second, for a drawn span. Times in seconds on the bench's clock.
 */
record LongDrive(Duration duration, long seed, BusProtocol protocol, boolean hasFaults) {
  static final int MINUTE = 60;

  /** No fault begins later in its minute. */
  static final int LATEST_START = 10;

  static final int LONGEST_FAULT = 6;

  private static final List<Fault.Kind> KINDS = List.copyOf(EnumSet.allOf(Fault.Kind.class));

  /** Kinds that take nothing away. */
  private static final Set<Fault.Kind> HARMLESS =
      Set.of(
          Fault.Kind.ENGINE_STOPPED,
          Fault.Kind.ECHO,
          Fault.Kind.PENDING,
          Fault.Kind.NULS,
          Fault.Kind.INTERLEAVED,
          Fault.Kind.PADDING);

  /** The faults, one for every minute but the first two. */
  List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    Random random = new Random(seed);
    for (int minute = 2; hasFaults && minute < duration.toMinutes(); minute++) {
      double from = minute * MINUTE + random.nextDouble(LATEST_START);
      double span = 1 + random.nextDouble(LONGEST_FAULT - 1);
      faults.add(new Fault(kindOf(minute), from, from + span));
    }
    return faults;
  }

  /** What goes wrong in a minute. */
  static Fault.Kind kindOf(int minute) {
    return KINDS.get(minute % KINDS.size());
  }

  BenchSettings settings() {
    return new BenchSettings(
        scenario(),
        OptionalDouble.empty(),
        seed,
        0,
        new VehicleTraits(protocol, false, OptionalDouble.empty(), List.of(), 0),
        AdapterTraits.USUAL,
        new FaultPlan(faults()));
  }

  Scenario scenario() {
    Scenario pull =
        Scenarios.all().stream()
            .filter(each -> each.course() instanceof Course.OnDynamometer)
            .findFirst()
            .orElseThrow();
    Course.OnDynamometer rollers = (Course.OnDynamometer) pull.course();
    return new Scenario(
        "long-drive",
        "A steady load for hours.",
        duration.plusMinutes(1),
        pull.vehicleName(),
        pull.vehicleFile(),
        pull.rig().with(RigTrait.SENSOR_NOISE, 0.5),
        new Course.OnDynamometer(
            rollers.celsius(),
            rollers.altitude(),
            rollers.gear(),
            rollers.metresPerSecond(),
            rollers.coolingMetresPerSecond(),
            List.of(new Course.Wish(0, 120)),
            rollers.start()));
  }

  /** How many faults take readings away. */
  int harmfulFaults() {
    return (int) faults().stream().filter(fault -> !HARMLESS.contains(fault.kind())).count();
  }
}
