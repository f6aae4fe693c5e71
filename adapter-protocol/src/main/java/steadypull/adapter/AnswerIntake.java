package steadypull.adapter;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.adapter.diagnostic.Answer;
import steadypull.adapter.diagnostic.Answers;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.diagnostic.NegativeCode;
import steadypull.adapter.diagnostic.Parameter;
import steadypull.adapter.diagnostic.SignalValue;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.polling.PollTarget;
import steadypull.adapter.polling.PollingPlan;

/**
 * Turns the messages of a reply into readings and tells the plan what was answered, refused or
 * missed. For every parameter one control unit is believed; what others say to it is left aside.
 * Reader thread only.
 */
final class AnswerIntake {
  private static final Duration SOON = Duration.ofMillis(250);
  private static final Duration MUCH_LATER = Duration.ofSeconds(30);
  private static final int REFUSALS_BEFORE_DROPPING = 3;

  private final VehicleKnowledge vehicle;
  private final VehicleLearning learning;
  private final PollingPlan plan;
  private final ReaderListener listener;

  AnswerIntake(
      VehicleKnowledge vehicle,
      VehicleLearning learning,
      PollingPlan plan,
      ReaderListener listener) {
    this.vehicle = vehicle;
    this.learning = learning;
    this.plan = plan;
    this.listener = listener;
  }

  /** Takes the reply to a request for parameters; gives those that a control unit answered to. */
  Set<Integer> takeParameters(List<Integer> asked, List<Message> messages, long nanoTime) {
    Set<Integer> answered = new HashSet<>();
    for (Message message : messages) {
      vehicle
          .findUnit(message.controlUnit())
          .ifPresent(unit -> answered.addAll(takeMessage(asked, message, unit, nanoTime)));
    }
    for (int number : asked) {
      if (!answered.contains(number)) {
        plan.missed(new PollTarget.Parameter(number));
      }
    }
    return answered;
  }

  private Set<Integer> takeMessage(
      List<Integer> asked, Message message, ControlUnit unit, long nanoTime) {
    boolean isSingle = asked.size() == 1;
    Answer answer =
        isSingle
            ? Answers.toOne(asked.getFirst(), message.payload())
            : Answers.toSeveral(Set.copyOf(asked), unit.lengths(), message.payload());
    return switch (answer) {
      case Answer.CurrentData(Map<Integer, Payload> data) -> {
        if (isSingle) {
          data.forEach(unit::learn);
        } else {
          unit.fits();
        }
        yield takeData(data, message.controlUnit(), unit, nanoTime);
      }
      case Answer.Refused(NegativeCode code) ->
          refused(asked, message.controlUnit(), code, nanoTime);
      case Answer.Misfit misfit -> {
        boolean isBelieved =
            asked.stream().anyMatch(number -> isBelieved(message.controlUnit(), number));
        if (isBelieved && unit.misfitsAgain()) {
          plan.askSingly();
        }
        yield Set.of();
      }
      case Answer.IdentifiedData elsewhere -> Set.of();
      case Answer.Stray stray -> Set.of();
    };
  }

  private boolean isBelieved(String controlUnit, int parameter) {
    return vehicle.unitFor(parameter).filter(controlUnit::equals).isPresent();
  }

  private Set<Integer> takeData(
      Map<Integer, Payload> data, String controlUnit, ControlUnit unit, long nanoTime) {
    Set<Integer> answered = new HashSet<>();
    data.forEach(
        (number, bytes) -> {
          if (isBelieved(controlUnit, number)) {
            answered.add(number);
            plan.answered(new PollTarget.Parameter(number));
            plan.learnt(new PollTarget.Parameter(number));
            VehicleLearning.parameter(number)
                .ifPresent(parameter -> deliver(parameter, bytes, controlUnit, unit, nanoTime));
          }
        });
    return answered;
  }

  private void deliver(
      Parameter parameter, Payload data, String controlUnit, ControlUnit unit, long nanoTime) {
    parameter.signalsPresent(data).stream()
        .filter(signal -> learning.isWanted(signal.key()))
        .forEach(signal -> vehicle.signals().add(signal.key()));
    for (SignalValue decoded : parameter.decode(data, unit.maxima())) {
      if (learning.isWanted(decoded.signal().key())) {
        listener.reading(new Reading(controlUnit, decoded.signal(), decoded.value(), nanoTime));
      }
    }
  }

  /** A refusal by the believed unit is an answer as far as the link is concerned. */
  private Set<Integer> refused(
      List<Integer> asked, String controlUnit, NegativeCode code, long nanoTime) {
    Set<Integer> concerned = new HashSet<>(asked);
    concerned.removeIf(number -> !isBelieved(controlUnit, number));
    if (asked.size() > 1 && !concerned.isEmpty() && !isForNow(code)) {
      plan.askSingly();
    } else {
      concerned.forEach(number -> obey(new PollTarget.Parameter(number), code, nanoTime));
    }
    return concerned;
  }

  /** Whether a refusal says nothing about how to ask, only about the moment. */
  private static boolean isForNow(NegativeCode code) {
    return switch (code) {
      case PENDING, BUSY, NOT_NOW -> true;
      case TOO_MUCH, NEVER, GENERAL -> false;
    };
  }

  private void obey(PollTarget target, NegativeCode code, long nanoTime) {
    switch (code) {
      case PENDING -> {} // The answer follows in the same reply, or the next due time comes.
      case BUSY -> plan.postpone(target, SOON, nanoTime);
      case NOT_NOW -> plan.postpone(target, MUCH_LATER, nanoTime);
      case NEVER -> plan.drop(target);
      case TOO_MUCH, GENERAL -> {
        if (plan.missed(target) >= REFUSALS_BEFORE_DROPPING) {
          plan.drop(target);
        }
      }
    }
  }

  /** Takes the reply to a request for an identifier; whether a control unit answered to it. */
  boolean takeIdentifier(PollTarget.Identifier target, List<Message> messages, long nanoTime) {
    boolean isAnswered = false;
    for (Message message : messages) {
      switch (Answers.toIdentifier(target.identifier(), message.payload())) {
        case Answer.IdentifiedData(Payload data) -> {
          plan.answered(target);
          isAnswered = true;
          deliver(target, data, message.controlUnit(), nanoTime);
        }
        case Answer.Refused(NegativeCode code) -> {
          isAnswered = true;
          obey(target, code, nanoTime);
        }
        case Answer.CurrentData elsewhere -> isAnswered |= false;
        case Answer.Stray stray -> isAnswered |= false;
        case Answer.Misfit misfit -> isAnswered |= false;
      }
    }
    return isAnswered;
  }

  private void deliver(
      PollTarget.Identifier target, Payload data, String controlUnit, long nanoTime) {
    for (DefinedSignal defined : learning.definedBy(target)) {
      vehicle.signals().add(defined.signal().key());
      defined
          .decode(data)
          .ifPresent(
              decoded ->
                  listener.reading(
                      new Reading(controlUnit, decoded.signal(), decoded.value(), nanoTime)));
    }
  }
}
