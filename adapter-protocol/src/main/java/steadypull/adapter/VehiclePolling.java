package steadypull.adapter;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.polling.Pacing;
import steadypull.adapter.polling.PollRequest;
import steadypull.adapter.polling.PollTarget;
import steadypull.adapter.polling.PollingPlan;
import steadypull.adapter.polling.Urgency;

/**
 * Asks a vehicle that answers: first for everything wanted, one by one, to learn lengths and
 * sensors; then by plan until there is trouble. Reader thread only.
 */
final class VehiclePolling {
  private static final Duration PATIENCE = Duration.ofSeconds(3);
  private static final int FAILED_PACKS_BEFORE_SINGLES = 2;

  private final VehiclePort port;
  private final SignOfLife life;
  private final EngineWatch engine;
  private final LinkClock clock;
  private final VehicleLearning learning;
  private final AnswerIntake intake;
  private final PollingPlan plan;
  private final InquiryPlan inquiries;
  private final VehicleKnowledge vehicle;
  private final PollingRequests requests;
  private final LinkHealth health;
  private final boolean asksUnits;
  private boolean isPolling;
  private int failedPacks;

  VehiclePolling(
      VehiclePort port,
      SignOfLife life,
      LinkClock clock,
      ReaderSettings settings,
      VehicleKnowledge vehicle,
      EngineWatch engine) {
    this.port = port;
    this.engine = engine;
    this.life = life;
    this.clock = clock;
    this.learning = new VehicleLearning(settings, vehicle);
    this.plan = new PollingPlan(pacing(settings, port.mostParameters()), vehicle.format()::lines);
    this.vehicle = vehicle;
    this.requests = new PollingRequests(vehicle, plan);
    this.intake = new AnswerIntake(vehicle, learning, plan, engine);
    this.inquiries = new InquiryPlan(port, vehicle, engine, clock.nanoTime());
    this.asksUnits = settings.pace() == ReaderSettings.Pace.FULL;
    this.health = new LinkHealth(clock.nanoTime());
  }

  /** How hard to ask, with so many parameters in one request. */
  static Pacing pacing(ReaderSettings settings, int most) {
    return switch (settings.pace()) {
      case POLITE -> Pacing.polite(most);
      case FULL -> Pacing.full(most);
    };
  }

  /**
   * Asks for everything once; of a known vehicle only for what it has not answered yet.
   *
   * @param isKnown whether lengths and sensors were learnt before
   * @return the trouble that prevented it, or empty
   */
  Optional<Trouble> learn(boolean isKnown) throws LinkException {
    Optional<Trouble> trouble = Optional.empty();
    if (!isKnown) {
      inquiries.introduce();
      trouble = askOneByOne(learning.scalingParameters());
    }
    learning.parameters().forEach(this::addParameter);
    for (PollTarget.Identifier target : learning.identifiers()) {
      plan.add(target, Urgency.MEDIUM, target.header(), clock.nanoTime());
      trouble = trouble.isPresent() || isKnown ? trouble : askIdentifier(target);
    }
    return trouble.isPresent() ? trouble : askOneByOne(unanswered());
  }

  private List<Integer> unanswered() {
    return learning.parameters().stream().filter(number -> learning.length(number) == 0).toList();
  }

  private void addParameter(int number) {
    PollTarget target = new PollTarget.Parameter(number);
    String unit = vehicle.unitFor(number).orElse("");
    plan.add(target, urgency(number), unit, clock.nanoTime());
    plan.learnt(target, learning.length(number));
  }

  /** Where a session must be kept alive, the most urgent parameter is never a slow one. */
  private Urgency urgency(int number) {
    Urgency usual = learning.urgency(number);
    boolean keepsAlive = port.format().hasSessions() && number == learning.parameters().getFirst();
    return keepsAlive && usual == Urgency.SLOW ? Urgency.MEDIUM : usual;
  }

  private Optional<Trouble> askOneByOne(List<Integer> numbers) throws LinkException {
    for (int number : numbers) {
      Optional<Trouble> trouble = askParameters(new PollRequest.CurrentData(List.of(number)));
      if (trouble.isPresent()) {
        return trouble;
      }
    }
    return Optional.empty();
  }

  /** Asks by plan until there is trouble; for trouble codes between, and once more at the end. */
  Trouble poll() throws LinkException {
    isPolling = true;
    if (asksUnits) {
      requests.askUnits();
    }
    life.allowLastQuestions(true);
    try {
      return pollAndInquire();
    } finally {
      life.allowLastQuestions(false);
    }
  }

  private Trouble pollAndInquire() throws LinkException {
    while (life.isWanted()) {
      if (engine.isOff(clock.nanoTime())) {
        inquiries.askLast();
        return new Trouble.EngineOff();
      }
      Optional<Trouble> trouble =
          inquiries.isDue(clock.nanoTime()) ? inquire() : next(plan.next(clock.nanoTime()));
      if (trouble.isPresent()) {
        return trouble.get();
      }
    }
    if (life.goesOn()) {
      inquiries.askLast();
    }
    return new Trouble.Stopping();
  }

  private Optional<Trouble> next(PollRequest next) throws LinkException {
    return switch (next) {
      case PollRequest.Wait wait -> pauseUntil(wait.untilNanoTime());
      case PollRequest.CurrentData request -> askParameters(request);
      case PollRequest.Identified request -> askIdentifier(request.target());
    };
  }

  private Optional<Trouble> pauseUntil(long nanoTime) {
    long now = clock.nanoTime();
    life.pauseUntil(now + Math.min(nanoTime - now, inquiries.nanosLeft(now)));
    return Optional.empty();
  }

  /** Many a vehicle answers nothing to a question beside the parameters: no trouble. */
  private Optional<Trouble> inquire() throws LinkException {
    Reply reply = inquiries.ask(clock.nanoTime());
    if (reply instanceof Reply.Data) {
      return good();
    }
    return reply instanceof Reply.NoData ? Optional.empty() : bad(reply);
  }

  private Optional<Trouble> askParameters(PollRequest.CurrentData asked) throws LinkException {
    List<Integer> numbers = asked.parameters();
    long start = clock.nanoTime();
    VehicleRequest request = requests.of(asked);
    Reply reply = port.ask(request, PATIENCE);
    int answered = 0;
    if (reply instanceof Reply.Data) {
      answered = intake.takeParameters(numbers, port.messages(), port.lastTextNanoTime());
    } else if (reply instanceof Reply.NoData) {
      intake.missed(numbers, answered);
    }
    note(request, numbers.size(), answered != 0);
    // While lengths are learnt, the adapter waits for more answers than come.
    if (isPolling && answered == (1 << numbers.size()) - 1) {
      plan.took(asked, clock.nanoTime() - start);
    }
    return answered == 0 ? bad(reply) : good();
  }

  /**
   * Some control units keep silent when they are asked alone, others when they are asked for
   * several parameters at once; the first is found out first.
   */
  private void note(VehicleRequest request, int size, boolean isAnswered) {
    requests.note(request, isAnswered);
    if (size > 1 && request.unit().isEmpty()) {
      failedPacks = isAnswered ? 0 : failedPacks + 1;
      if (failedPacks >= FAILED_PACKS_BEFORE_SINGLES) {
        plan.askSingly();
      }
    }
  }

  private Optional<Trouble> askIdentifier(PollTarget.Identifier target) throws LinkException {
    Reply reply =
        port.ask(
            VehicleRequest.to(target.header(), Requests.identifier(target.identifier())), PATIENCE);
    if (!port.canAddress(target.header())) {
      plan.drop(target);
      return Optional.empty();
    }
    if (reply instanceof Reply.Data
        && intake.takeIdentifier(target, port.messages(), port.lastTextNanoTime())) {
      return good();
    }
    plan.missed(target);
    // One control unit that sleeps is no trouble of the link; the parameters tell about that.
    return reply instanceof Reply.NoData ? Optional.empty() : bad(reply);
  }

  private Optional<Trouble> good() {
    health.good(clock.nanoTime());
    return Optional.empty();
  }

  private Optional<Trouble> bad(Reply reply) throws LinkException {
    if (!life.goesOn()) {
      return Optional.of(new Trouble.Stopping());
    }
    if (reply instanceof Reply.Silence && !port.resynchronise()) {
      return Optional.of(life.goesOn() ? new Trouble.AdapterMute() : new Trouble.Stopping());
    }
    return health.bad(reply, clock.nanoTime());
  }
}
