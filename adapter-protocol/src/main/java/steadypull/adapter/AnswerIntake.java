package steadypull.adapter;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.diagnostic.Answer;
import steadypull.adapter.diagnostic.Answers;
import steadypull.adapter.diagnostic.CurrentDataReader;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.diagnostic.NegativeCode;
import steadypull.adapter.diagnostic.Parameter;
import steadypull.adapter.diagnostic.Signal;
import steadypull.adapter.diagnostic.SignalSink;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.OctetWindow;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.polling.PollTarget;
import steadypull.adapter.polling.PollingPlan;

/**
 * Turns the messages of a reply into readings and tells the plan what was answered, refused or
 * missed. For every parameter one control unit is believed; what others say to it is left aside.
 * Allocates the readings and nothing else, once sensors and lengths were learnt. Reader thread
 * only.
 */
final class AnswerIntake {
  private static final Duration SOON = Duration.ofMillis(250);
  private static final Duration MUCH_LATER = Duration.ofSeconds(30);
  private static final int REFUSALS_BEFORE_DROPPING = 3;
  private static final int NEVERS_BEFORE_DROPPING = 2;
  private static final int PARAMETERS = 0x100;
  private static final int NOTHING = -1;

  private final VehicleKnowledge vehicle;
  private final VehicleLearning learning;
  private final PollingPlan plan;
  private final ReaderListener listener;
  private final CurrentDataReader answer = new CurrentDataReader();
  private final OctetWindow message = new OctetWindow();
  private final OctetWindow data = new OctetWindow();
  private final SignalSink sink = this::hand;
  private final String[] believed = new String[PARAMETERS];
  private final @Nullable Parameter[] table = new @Nullable Parameter[PARAMETERS];
  private final boolean[] hasSensors = new boolean[PARAMETERS];
  private final int[] sensorsSeen = new int[PARAMETERS];
  private String sender = "";
  private long arrivalNanoTime;

  AnswerIntake(
      VehicleKnowledge vehicle,
      VehicleLearning learning,
      PollingPlan plan,
      ReaderListener listener) {
    this.vehicle = vehicle;
    this.learning = learning;
    this.plan = plan;
    this.listener = listener;
    Arrays.setAll(believed, number -> vehicle.unitFor(number).orElse(""));
    Arrays.setAll(table, number -> VehicleLearning.parameter(number).orElse(null));
    Arrays.fill(sensorsSeen, NOTHING);
    for (int number = 0; number < PARAMETERS; number++) {
      Parameter parameter = table[number];
      hasSensors[number] = parameter != null && parameter.signals().size() > 1;
    }
  }

  /**
   * Takes the reply to a request for parameters.
   *
   * @param asked one to six numbers
   * @return a bit for each of those, in their order from bit 0 on, that its control unit answered
   *     or refused
   */
  int takeParameters(List<Integer> asked, MessageBuffer messages, long nanoTime) {
    arrivalNanoTime = nanoTime;
    int answered = 0;
    for (int i = 0; i < messages.count(); i++) {
      sender = messages.sender(i);
      ControlUnit unit = vehicle.units().get(sender);
      if (unit != null) {
        messages.show(message, i);
        answered |= takeMessage(asked, unit, messages, i);
      }
    }
    missed(asked, answered);
    return answered;
  }

  /** Notes which of the parameters asked did not come. */
  void missed(List<Integer> asked, int answered) {
    for (int i = 0; i < asked.size(); i++) {
      if ((answered >> i & 1) == 0) {
        plan.missed(new PollTarget.Parameter(asked.get(i)));
      }
    }
  }

  private int takeMessage(
      List<Integer> asked, ControlUnit unit, MessageBuffer messages, int index) {
    return switch (answer.read(asked, unit.lengths(), message)) {
      case DATA -> takeData(asked, unit, messages, index);
      case REFUSED -> refused(asked, answer.code());
      case MISFIT -> misfit(asked, unit);
      case STRAY -> 0;
    };
  }

  private int misfit(List<Integer> asked, ControlUnit unit) {
    if (believedFor(asked) != 0 && unit.misfitsAgain()) {
      plan.askSingly();
    }
    return 0;
  }

  private int takeData(List<Integer> asked, ControlUnit unit, MessageBuffer messages, int index) {
    if (asked.size() > 1) {
      unit.fits();
    }
    int answered = 0;
    for (int i = 0; i < answer.count(); i++) {
      int number = answer.number(i);
      messages.show(data, index, answer.start(i), answer.end(i));
      if (asked.size() == 1) {
        unit.learn(number, data);
      }
      if (isBelieved(number)) {
        answered |= 1 << answer.position(i);
        plan.answered(number, data.size());
        deliver(number, unit);
      }
    }
    return answered;
  }

  private boolean isBelieved(int parameter) {
    return believed[parameter].equals(sender);
  }

  /** A bit for each parameter asked for which the sender is believed. */
  private int believedFor(List<Integer> asked) {
    int concerned = 0;
    for (int i = 0; i < asked.size(); i++) {
      concerned |= isBelieved(asked.get(i)) ? 1 << i : 0;
    }
    return concerned;
  }

  private void deliver(int number, ControlUnit unit) {
    Parameter parameter = table[number];
    if (parameter != null) {
      learnSensors(parameter);
      parameter.decode(data, unit.maxima(number, data), sink);
    }
  }

  /** The first data byte tells which sensors there are; it seldom changes. */
  private void learnSensors(Parameter parameter) {
    int number = parameter.number();
    int sensors = hasSensors[number] ? data.at(0) : 0;
    if (sensorsSeen[number] != sensors) {
      sensorsSeen[number] = sensors;
      parameter.signalsPresent(data).stream()
          .map(Signal::key)
          .filter(learning::isWanted)
          .forEach(vehicle.signals()::add);
    }
  }

  private void hand(Signal signal, double value) {
    if (learning.isWanted(signal.key())) {
      listener.reading(new Reading(sender, signal, value, arrivalNanoTime));
    }
  }

  /** A refusal by the believed unit is an answer as far as the link is concerned. */
  private int refused(List<Integer> asked, NegativeCode code) {
    int concerned = believedFor(asked);
    if (asked.size() > 1 && concerned != 0 && !isForNow(code)) {
      plan.askSingly();
      return concerned;
    }
    for (int i = 0; i < asked.size(); i++) {
      if ((concerned >> i & 1) == 1) {
        obey(new PollTarget.Parameter(asked.get(i)), code, arrivalNanoTime);
      }
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
      case NEVER -> {
        // Once may be damage on the way: one bit makes it of "busy".
        if (plan.missed(target) >= NEVERS_BEFORE_DROPPING) {
          plan.drop(target);
        }
      }
      case TOO_MUCH, GENERAL -> {
        if (plan.missed(target) >= REFUSALS_BEFORE_DROPPING) {
          plan.drop(target);
        }
      }
    }
  }

  /** Takes the reply to a request for an identifier; whether a control unit answered to it. */
  boolean takeIdentifier(PollTarget.Identifier target, MessageBuffer messages, long nanoTime) {
    boolean isAnswered = false;
    for (Message one : messages.messages()) {
      switch (Answers.toIdentifier(target.identifier(), one.payload())) {
        case Answer.IdentifiedData(Payload bytes) -> {
          plan.answered(target);
          isAnswered = true;
          deliver(target, bytes, one.controlUnit(), nanoTime);
        }
        case Answer.Refused(NegativeCode code) -> {
          isAnswered = true;
          obey(target, code, nanoTime);
        }
        case Answer.CurrentData elsewhere -> isAnswered |= false;
        case Answer.Stray stray -> isAnswered |= false;
      }
    }
    return isAnswered;
  }

  private void deliver(
      PollTarget.Identifier target, Payload bytes, String controlUnit, long nanoTime) {
    for (DefinedSignal defined : learning.definedBy(target)) {
      vehicle.signals().add(defined.signal().key());
      defined
          .decode(bytes)
          .ifPresent(
              decoded ->
                  listener.reading(
                      new Reading(controlUnit, decoded.signal(), decoded.value(), nanoTime)));
    }
  }
}
