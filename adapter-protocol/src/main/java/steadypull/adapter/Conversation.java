package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;

/**
 * Everything between opening a port and having to open it again: start the adapter, find the
 * vehicle, poll, and climb the ladder after trouble. Reader thread only.
 */
final class Conversation {
  private static final Duration VEHICLE_RETRY = Duration.ofSeconds(5);

  /** For a vehicle that has been silent for long, though the engine may run. */
  private static final Duration PATIENT_RETRY = Duration.ofSeconds(10);

  /** How a conversation ended. A closed set. */
  sealed interface Ending {

    /** The reader is to stop. */
    record Stopped() implements Ending {}

    /** No adapter was heard on this port; another way of opening it may be worth a try. */
    record NoAdapter(String reason) implements Ending {}

    /** It went well for a time, now the port has to be opened again. */
    record Lost(String reason) implements Ending {}
  }

  private final AdapterPort port;
  private final SignOfLife life;
  private final LinkClock clock;
  private final ReaderSettings settings;
  private final EngineWatch engine;
  private final EngineRest rest;
  private final ReconnectLadder ladder;
  private Optional<VehicleKnowledge> vehicle;
  private OptionalLong quietSinceNanoTime = OptionalLong.empty();

  Conversation(
      AdapterPort port,
      SignOfLife life,
      LinkClock clock,
      ReaderSettings settings,
      ReaderListener listener,
      ReconnectLadder ladder,
      Optional<VehicleKnowledge> vehicle) {
    this.port = port;
    this.life = life;
    this.clock = clock;
    this.settings = settings;
    this.engine = new EngineWatch(listener);
    this.rest = new EngineRest(life, clock);
    this.ladder = ladder;
    this.vehicle = vehicle;
  }

  /** The vehicle that was found last, to be recognised again. */
  Optional<VehicleKnowledge> vehicle() {
    return vehicle;
  }

  Ending run() throws LinkException {
    return converseOr(new AdapterStart(port).fromScratch());
  }

  private Ending converseOr(AdapterStart.Outcome start) throws LinkException {
    if (!life.goesOn()) {
      return new Ending.Stopped();
    }
    return switch (start) {
      case AdapterStart.Outcome.Ready ready -> converse(ready.identity(), ready.vehicle());
      case AdapterStart.Outcome.NotAnAdapter other ->
          new Ending.NoAdapter(LostReason.notAnAdapter(port.address(), other.heard()));
      case AdapterStart.Outcome.Mute mute -> new Ending.NoAdapter(LostReason.mute(port.address()));
    };
  }

  private Ending converse(String identity, VehiclePort behind) throws LinkException {
    while (life.goesOn()) {
      Trouble trouble = findAndPoll(identity, behind);
      if (trouble instanceof Trouble.EngineOff) {
        trouble = rest.rest(identity, behind, vehicle);
        ladder.rested();
      }
      if (trouble instanceof Trouble.Stopping || !life.goesOn()) {
        break;
      }
      switch (ladder.next(trouble)) {
        case SEARCH_AGAIN -> {}
        case CLOSE_PROTOCOL -> behind.closeProtocol();
        case WARM_START -> {
          return converseOr(new AdapterStart(port).reset(WorkingMode.WARM_START));
        }
        case FULL_RESET -> {
          return converseOr(new AdapterStart(port).reset(WorkingMode.FULL_RESET));
        }
        case REOPEN -> {
          return new Ending.Lost(LostReason.of(port.address(), trouble));
        }
      }
    }
    return new Ending.Stopped();
  }

  private Trouble findAndPoll(String identity, VehiclePort behind) throws LinkException {
    if (!isWaitingForVehicle(life.state())) {
      life.announce(new LinkState.Searching(identity));
    }
    String firstProtocol = vehicle.map(VehicleKnowledge::protocolNumber).orElse("");
    return switch (new VehicleSearch(behind).search(firstProtocol)) {
      case VehicleSearch.Outcome.Found found -> poll(identity, behind, found.vehicle());
      case VehicleSearch.Outcome.Failed(Trouble.VehicleQuiet quiet) when life.goesOn() ->
          awaitVehicle(identity, behind, quiet);
      case VehicleSearch.Outcome.Failed failed -> failed.trouble();
    };
  }

  private static boolean isWaitingForVehicle(LinkState state) {
    return state instanceof LinkState.VehicleSilent || state instanceof LinkState.Resting;
  }

  /** Tells that the vehicle is silent and waits; after a while it is left alone. */
  private Trouble awaitVehicle(String identity, VehiclePort behind, Trouble.VehicleQuiet quiet)
      throws LinkException {
    if (ladder.resetsFirst(quiet)) {
      return quiet;
    }
    if (quietSinceNanoTime.isEmpty()) {
      quietSinceNanoTime = OptionalLong.of(clock.nanoTime());
    }
    boolean isQuietForLong =
        clock.nanoTime() - quietSinceNanoTime.getAsLong() >= EngineWatch.OFF_AFTER.toNanos();
    if (isQuietForLong && maySleep(quiet.cause()) && !rest.isCharging(behind)) {
      return new Trouble.EngineOff();
    }
    life.announce(new LinkState.VehicleSilent(identity, quiet.cause()));
    life.pause(isQuietForLong ? PATIENT_RETRY : VEHICLE_RETRY);
    return quiet;
  }

  /** A bus that is jammed, or an adapter that is broken, is no sleeping vehicle. */
  private static boolean maySleep(SilenceCause cause) {
    return switch (cause) {
      case NO_ANSWER, BUS_FAULT -> true;
      case BUS_BUSY, ADAPTER_FAULT -> false;
    };
  }

  private Trouble poll(String identity, VehiclePort behind, VehicleKnowledge found)
      throws LinkException {
    boolean isKnown = vehicle.filter(found::recognises).isPresent();
    VehiclePolling polling = new VehiclePolling(behind, life, clock, settings, found, engine);
    engine.beginAnew();
    Optional<Trouble> trouble = polling.learn(isKnown);
    if (trouble.isPresent()) {
      return trouble.get();
    }
    connected(identity, behind, found);
    return pollWhileEngineRuns(polling, behind);
  }

  private void connected(String identity, VehiclePort behind, VehicleKnowledge found)
      throws LinkException {
    vehicle = Optional.of(found);
    quietSinceNanoTime = OptionalLong.empty();
    ladder.connected();
    if (engine.turns()) {
      rest.engineRuns(behind);
    }
    life.announce(
        new LinkState.Connected(
            identity, found.protocol(), found.vin(), found.signals().stream().sorted().toList()));
  }

  /** A charging voltage overrules an engine that seems to stand: then it is not off. */
  private Trouble pollWhileEngineRuns(VehiclePolling polling, VehiclePort behind)
      throws LinkException {
    Trouble trouble = polling.poll();
    while (trouble instanceof Trouble.EngineOff && rest.isCharging(behind)) {
      engine.beginAnew();
      trouble = polling.poll();
    }
    return trouble;
  }
}
