package steadypull.adapter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.diagnostic.Maxima;
import steadypull.adapter.diagnostic.Parameter;
import steadypull.adapter.diagnostic.ParameterTable;
import steadypull.adapter.diagnostic.Signal;
import steadypull.adapter.polling.PollTarget;
import steadypull.adapter.polling.Urgency;

/** Which of the wanted things this vehicle can be asked for. Immutable. */
final class VehicleLearning {
  private final ReaderSettings settings;
  private final VehicleKnowledge vehicle;

  VehicleLearning(ReaderSettings settings, VehicleKnowledge vehicle) {
    this.settings = settings;
    this.vehicle = vehicle;
  }

  /**
   * Wanted parameters that a control unit supports, the most urgent first; where none is wanted,
   * one that tells whether the vehicle still answers.
   */
  List<Integer> parameters() {
    List<Integer> wanted =
        ParameterTable.all().stream()
            .filter(this::isWanted)
            .map(Parameter::number)
            .filter(vehicle::isSupported)
            .sorted(Comparator.comparing(this::urgency))
            .toList();
    return wanted.isEmpty() ? vehicle.anyParameter().stream().boxed().toList() : wanted;
  }

  /** How often a parameter is worth asking for: as often as the most wanted of its signals. */
  Urgency urgency(int number) {
    List<String> wanted =
        ParameterTable.find(number).stream()
            .flatMap(parameter -> parameter.signals().stream())
            .map(Signal::key)
            .filter(settings.wanted()::contains)
            .toList();
    boolean isSeldom = !wanted.isEmpty() && settings.seldom().containsAll(wanted);
    return isSeldom ? Urgency.SLOW : Urgency.ofParameter(number);
  }

  private boolean isWanted(Parameter parameter) {
    return parameter.signals().stream()
        .anyMatch(signal -> settings.wanted().contains(signal.key()));
  }

  /** Parameters that are asked once because they scale wanted ones. */
  List<Integer> scalingParameters() {
    List<Integer> scaling = new ArrayList<>();
    List<Integer> polled = parameters();
    if (polled.contains(0x0B) && vehicle.isSupported(Maxima.MANIFOLD_PARAMETER)) {
      scaling.add(Maxima.MANIFOLD_PARAMETER);
    }
    if (polled.contains(0x10) && vehicle.isSupported(Maxima.AIR_FLOW_PARAMETER)) {
      scaling.add(Maxima.AIR_FLOW_PARAMETER);
    }
    return scaling;
  }

  /** Data bytes of a parameter as the believed control unit has told; 0 if it has not yet. */
  int length(int parameter) {
    return vehicle
        .unitFor(parameter)
        .flatMap(vehicle::findUnit)
        .map(unit -> unit.lengths()[parameter])
        .orElse(0);
  }

  /**
   * The vehicle's own identifiers, each once; none on the older buses and none behind a header that
   * the protocol cannot carry.
   */
  Set<PollTarget.Identifier> identifiers() {
    Set<PollTarget.Identifier> targets =
        new TreeSet<>(
            Comparator.comparing(PollTarget.Identifier::header)
                .thenComparingInt(PollTarget.Identifier::identifier));
    settings.defined().stream()
        .filter(signal -> vehicle.format().canAddress(signal.header()))
        .forEach(signal -> targets.add(target(signal)));
    return targets;
  }

  /** The defined signals that an identifier's answer carries. */
  List<DefinedSignal> definedBy(PollTarget.Identifier target) {
    return settings.defined().stream().filter(signal -> target(signal).equals(target)).toList();
  }

  private static PollTarget.Identifier target(DefinedSignal signal) {
    return new PollTarget.Identifier(signal.header(), signal.identifier());
  }

  boolean isWanted(String signalKey) {
    return settings.wanted().contains(signalKey);
  }

  /** The table's entry for a parameter that was wanted. */
  static Optional<Parameter> parameter(int number) {
    return ParameterTable.find(number);
  }
}
