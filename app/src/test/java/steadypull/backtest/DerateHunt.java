package steadypull.backtest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Scenario;
import steadypull.thermal.Derate;
import steadypull.thermal.DerateDetector;
import steadypull.vehicle.Vehicle;

/**
 * The derates of a plant, which knows them, beside those that a detector finds in what the sensors
 * say.
 *
 * @param truth what the plant did
 * @param found what the detector told
 * @param seconds how long the drive was
 */
record DerateHunt(List<Span> truth, List<Span> found, int seconds) {
  /** What a vehicle tells of its engine's torque. */
  enum Telling {
    /** Demanded and delivered torque. */
    BOTH_TORQUES,
    /** Pedal and fuel. */
    PEDAL_AND_FUEL,
    /** Pedal and engine load. */
    PEDAL_AND_LOAD,
    /** Fuel, while a cruise control drives: the pedal reads zero. */
    CRUISE_AND_FUEL;

    private Optional<Sample> told(Channel channel, long micros, double value) {
      boolean isTorque =
          channel.equals(Channels.DEMANDED_TORQUE) || channel.equals(Channels.DELIVERED_TORQUE);
      boolean isFuel = channel.equals(Channels.FUEL_RATE);
      boolean isAir = channel.equals(Channels.AIR_MASS_FLOW);
      boolean isPedal = channel.equals(Channels.ACCELERATOR_PEDAL);
      boolean isTold =
          switch (this) {
            case BOTH_TORQUES -> true;
            case PEDAL_AND_FUEL -> !isTorque;
            case PEDAL_AND_LOAD -> !isTorque && !isFuel && !isAir;
            case CRUISE_AND_FUEL -> !isTorque;
          };
      return isTold
          ? Optional.of(new Sample(channel, micros, isPedal && this == CRUISE_AND_FUEL ? 0 : value))
          : Optional.empty();
    }
  }

  /** A derate: first and last second, greatest depth in points, the hottest channel. */
  record Span(int from, int until, double deepestPercent, Channel cause) {
    /** Whether a driver feels it. */
    boolean isDeep(double percent, int seconds) {
      return deepestPercent >= percent && until - from >= seconds;
    }

    private boolean touches(Span other, int within) {
      return from <= other.until + within && until >= other.from - within;
    }
  }

  /** A derate of the plant and what was told of it, if anything was. */
  record Match(Span truth, Optional<Span> found) {
    boolean isFound() {
      return found.isPresent();
    }

    boolean isCauseRight() {
      return found.filter(span -> span.cause().equals(truth.cause())).isPresent();
    }

    /** From its beginning until it was told; before it where negative. */
    int delaySeconds() {
      return found.orElseThrow().from() - truth.from();
    }
  }

  /** Every derate that lasted long enough to be one (contracts: 3 s). */
  List<Match> matches() {
    return truth.stream()
        .filter(span -> span.until() - span.from() >= LEAST_SECONDS)
        .map(
            span ->
                new Match(span, found.stream().filter(each -> each.touches(span, 6)).findFirst()))
        .toList();
  }

  /** What was told where the plant took nothing. */
  List<Span> invented() {
    return found.stream()
        .filter(each -> truth.stream().noneMatch(span -> span.touches(each, 10)))
        .toList();
  }

  /** Breaks that are shorter belong to one derate. */
  private static final int ONE_DERATE_SECONDS = 15;

  /** A derate begins here (contracts). */
  private static final double LEAST_PERCENT = 5;

  private static final int LEAST_SECONDS = 3;

  static DerateHunt over(Scenario scenario, long seed, Vehicle vehicle, Telling telling) {
    Drive drive = DemoWorld.drive(scenario, seed);
    DerateDetector detector = new DerateDetector(vehicle);
    Spans truth = new Spans();
    Spans found = new Spans();
    int second = 0;
    while (!drive.isOver()) {
      second++;
      poll(drive, second, telling, scenario.rig(), detector);
      PlantState state = drive.state();
      double missing = missingPercent(state, scenario.rig());
      if (missing >= LEAST_PERCENT) {
        truth.note(second, missing, hottest(state, scenario.rig()));
      }
      if (detector.tick(second * 1_000_000L) instanceof Derate.Active active) {
        found.note(second, active.cutPercent(), active.cause());
      }
    }
    return new DerateHunt(truth.spans, found.spans, second);
  }

  private static void poll(
      Drive drive, int second, Telling telling, Rig rig, DerateDetector detector) {
    Sensor[] sensors = Sensor.values();
    for (int i = 0; i < sensors.length; i++) {
      double at = second - 0.5 + 0.5 * i / sensors.length;
      drive.advanceTo(at);
      double value = drive.read(sensors[i]);
      Channels.find(sensors[i].channel())
          .filter(channel -> isFitted(channel, rig))
          .flatMap(channel -> telling.told(channel, Math.round(at * 1e6), value))
          .ifPresent(detector::accept);
    }
    drive.advanceTo(second);
  }

  private static boolean isFitted(Channel channel, Rig rig) {
    return rig.cooling() == Rig.Cooling.WATER_TO_AIR
        || !channel.equals(Channels.CHARGE_COOLANT_TEMP);
  }

  /** What the engine control takes of what is asked for, points of the reference torque. */
  static double missingPercent(PlantState state, Rig rig) {
    PlantState.Work work = state.work();
    double allowed = work.fullTorque() * work.availableShare();
    return 100
        * Math.max(0, work.demandedTorque() - allowed)
        / rig.of(RigTrait.REFERENCE_TORQUE_NM);
  }

  private static Channel hottest(PlantState state, Rig rig) {
    PlantState.Temperatures hot = state.temperatures();
    double air = hot.chargeAirOut() - rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC);
    double water =
        rig.cooling() == Rig.Cooling.WATER_TO_AIR
            ? hot.chargeCoolant() - rig.of(RigTrait.DERATE_CHARGE_COOLANT_DEGC)
            : Double.NEGATIVE_INFINITY;
    double engine = hot.engineCoolant() - rig.of(RigTrait.DERATE_ENGINE_COOLANT_DEGC);
    if (air >= water && air >= engine) {
      return Channels.CHARGE_AIR_TEMP_OUT;
    }
    return water >= engine ? Channels.CHARGE_COOLANT_TEMP : Channels.ENGINE_COOLANT_TEMP;
  }

  private static final class Spans {
    private final List<Span> spans = new ArrayList<>();

    void note(int second, double percent, Channel cause) {
      if (spans.isEmpty() || second - spans.getLast().until() > ONE_DERATE_SECONDS) {
        spans.add(new Span(second, second, percent, cause));
        return;
      }
      Span before = spans.removeLast();
      spans.add(
          new Span(
              before.from(), second, Math.max(before.deepestPercent(), percent), before.cause()));
    }
  }
}
