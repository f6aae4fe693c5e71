package steadypull.adapter;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import steadypull.adapter.diagnostic.Answer;
import steadypull.adapter.diagnostic.Answers;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;

/**
 * Waits for the engine to be started. While the adapter tells its supply voltage, nothing goes out
 * on the vehicle's bus: every message would keep control units awake that drain the battery. Only
 * where the voltage does not tell whether the engine runs, the bus is asked, seldom. After half an
 * hour the adapter is left alone too, so that it may sleep; one that answers after another half
 * hour as it always did does not sleep and is asked on. Reader thread only.
 */
final class EngineRest {
  private static final Duration BETWEEN_VOLTAGES = Duration.ofSeconds(20);
  private static final int VOLTAGES_PER_LOOK_AT_THE_BUS = 3;
  private static final Duration AWAKE = Duration.ofMinutes(30);

  /** Longer than the adapters' own span until they sleep, mostly up to 20 min (from memory). */
  private static final Duration BETWEEN_WAKINGS = Duration.ofMinutes(30);

  private static final Duration BETWEEN_LISTENINGS = Duration.ofSeconds(1);
  private static final Duration BUS_PATIENCE = Duration.ofSeconds(6);
  private static final int ENGINE_SPEED = 0x0C;

  private final SignOfLife life;
  private final LinkClock clock;
  private OptionalLong sinceNanoTime = OptionalLong.empty();
  private boolean voltageTells = true;
  private OptionalDouble volts = OptionalDouble.empty();
  private int looks;
  private boolean neverSleeps;

  EngineRest(SignOfLife life, LinkClock clock) {
    this.life = life;
    this.clock = clock;
  }

  /** The engine runs: the next rest is a new one, and the voltage now must be a charging one. */
  void engineRuns(VehiclePort port) throws LinkException {
    sinceNanoTime = OptionalLong.empty();
    OptionalDouble running = port.supplyVolts();
    voltageTells = isCharging(running);
  }

  /**
   * Whether the supply says that the engine may run, whatever its control unit says: a charging
   * voltage.
   */
  boolean isCharging(VehiclePort port) throws LinkException {
    volts = port.supplyVolts();
    return isCharging(volts);
  }

  /**
   * Rests until the engine seems to run or something else needs care.
   *
   * @param vehicle what is known of the vehicle, if it ever answered
   * @return engine off where it is time to look for the vehicle again, else the trouble
   */
  Trouble rest(String identity, VehiclePort port, Optional<VehicleKnowledge> vehicle)
      throws LinkException {
    if (sinceNanoTime.isEmpty()) {
      sinceNanoTime = OptionalLong.of(clock.nanoTime());
    }
    while (life.goesOn()) {
      life.announce(new LinkState.Resting(identity, volts));
      boolean maySleep = mayAdapterSleep();
      if (maySleep && wakesWithin(port, BETWEEN_WAKINGS)) {
        return new Trouble.AdapterRestarted("it woke by itself");
      }
      life.pause(maySleep ? Duration.ZERO : BETWEEN_VOLTAGES);
      Optional<Trouble> end = life.goesOn() ? lookUp(port, maySleep, vehicle) : Optional.empty();
      if (end.isPresent()) {
        return end.get();
      }
    }
    return new Trouble.Stopping();
  }

  /** Listens and sends nothing; many adapters wake by themselves when the engine is started. */
  private boolean wakesWithin(VehiclePort port, Duration span) throws LinkException {
    long end = clock.nanoTime() + span.toNanos();
    boolean woke = false;
    while (!woke && life.goesOn() && end - clock.nanoTime() > 0) {
      life.pause(BETWEEN_LISTENINGS);
      woke = port.tellsRestart();
    }
    return woke;
  }

  private boolean mayAdapterSleep() {
    return !neverSleeps && clock.nanoTime() - sinceNanoTime.orElseThrow() >= AWAKE.toNanos();
  }

  private Optional<Trouble> lookUp(
      VehiclePort port, boolean maySleep, Optional<VehicleKnowledge> vehicle) throws LinkException {
    Reply reply = port.askSupply();
    boolean isPrompt = isAnsweredAsBefore(reply);
    if (reply instanceof Reply.Silence && life.goesOn()) {
      if (!port.resynchronise()) {
        return Optional.of(new Trouble.AdapterMute());
      }
      reply = port.askSupply();
    }
    if (reply instanceof Reply.Restarted restarted) {
      return Optional.of(new Trouble.AdapterRestarted(restarted.text()));
    }
    volts = SupplyVoltage.of(reply);
    neverSleeps |= maySleep && isPrompt;
    Optional<Trouble> end =
        isCharging(volts)
            ? Optional.of(new Trouble.EngineOff())
            : isBusToBeAsked(maySleep) ? askBus(port, vehicle) : Optional.empty();
    // Whoever sleeps may forget its settings.
    return maySleep ? end.map(engine -> new Trouble.AdapterRestarted("it slept")) : end;
  }

  /** Whether an adapter that may have slept answers at once and as it did when it was awake. */
  private boolean isAnsweredAsBefore(Reply reply) {
    return SupplyVoltage.of(reply).isPresent()
        || (volts.isEmpty() && reply instanceof Reply.NotUnderstood);
  }

  private static boolean isCharging(OptionalDouble volts) {
    return volts.isPresent() && SupplyVoltage.isCharging(volts.getAsDouble());
  }

  private boolean isBusToBeAsked(boolean wasAsleep) {
    looks++;
    boolean isDue = wasAsleep || looks % VOLTAGES_PER_LOOK_AT_THE_BUS == 0;
    return isDue && (volts.isEmpty() || !voltageTells);
  }

  /** One question; a vehicle that was never found can only be searched for. */
  private Optional<Trouble> askBus(VehiclePort port, Optional<VehicleKnowledge> vehicle)
      throws LinkException {
    if (vehicle.isEmpty()) {
      return Optional.of(new Trouble.EngineOff());
    }
    boolean tellsSpeed = vehicle.get().isSupported(ENGINE_SPEED);
    int number = tellsSpeed ? ENGINE_SPEED : 0;
    Reply reply =
        port.ask(VehicleRequest.toEverybody(Requests.currentData(List.of(number))), BUS_PATIENCE);
    List<Message> messages = port.messages().messages();
    if (messages.stream().anyMatch(message -> !tellsSpeed || turns(message))) {
      return Optional.of(new Trouble.EngineOff());
    }
    boolean isUnreadable = reply instanceof Reply.Data && messages.isEmpty();
    return isUnreadable
        ? Optional.of(new Trouble.AdapterRestarted("it answers in another form"))
        : Optional.empty();
  }

  private static boolean turns(Message message) {
    return Answers.toOne(ENGINE_SPEED, message.payload()) instanceof Answer.CurrentData data
        && data.dataByParameter().values().stream().anyMatch(EngineRest::isAboveZero);
  }

  private static boolean isAboveZero(Payload speed) {
    for (int at = 0; at < speed.size(); at++) {
      if (speed.at(at) > 0) {
        return true;
      }
    }
    return false;
  }
}
