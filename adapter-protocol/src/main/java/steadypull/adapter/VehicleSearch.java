package steadypull.adapter;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import steadypull.adapter.diagnostic.Answer;
import steadypull.adapter.diagnostic.Answers;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.diagnostic.SupportMap;
import steadypull.adapter.diagnostic.VehicleIdentification;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * Looks for the vehicle behind a port and learns who is there: protocol, control units, their
 * support maps, the identification number. Reader thread only.
 */
final class VehicleSearch {
  private static final Duration PATIENCE = Duration.ofSeconds(3);
  private static final Duration LONG_PATIENCE = Duration.ofSeconds(6);
  private static final int LAST_MAP = 0xE0;
  private static final int MOST_TRIES = 3;
  private static final int TRIES_FOR_VIN = 2;

  /** How a search ended. A closed set. */
  sealed interface Outcome {

    /** The vehicle answers. */
    record Found(VehicleKnowledge vehicle) implements Outcome {}

    /** It did not work out. */
    record Failed(Trouble trouble) implements Outcome {}
  }

  private final VehiclePort port;

  VehicleSearch(VehiclePort port) {
    this.port = port;
  }

  /**
   * Searches.
   *
   * @param firstProtocol number of the protocol to try first, or empty text
   */
  Outcome search(String firstProtocol) throws LinkException {
    Reply reply = port.search(firstProtocol);
    return switch (reply) {
      case Reply.Data data -> identify(data);
      case Reply.NoData none -> quiet(reply);
      case Reply.NotConnected none -> quiet(reply);
      case Reply.BusFault fault -> quiet(reply);
      case Reply.Damaged damaged -> quiet(reply);
      case Reply.Overflowed full -> quiet(reply);
      case Reply.Stopped stopped -> quiet(reply);
      case Reply.Restarted restarted ->
          new Outcome.Failed(new Trouble.AdapterRestarted(restarted.text()));
      case Reply.Silence silence -> unanswered();
      case Reply.Accepted accepted -> confused(reply);
      case Reply.Text text -> confused(reply);
      case Reply.NotUnderstood unknown -> confused(reply);
      case Reply.Unexpected unexpected -> confused(reply);
    };
  }

  private static Outcome quiet(Reply reply) {
    return new Outcome.Failed(
        new Trouble.VehicleQuiet(SilenceCause.of(reply), ReplyWords.of(reply)));
  }

  private static Outcome confused(Reply reply) {
    return new Outcome.Failed(new Trouble.AdapterConfused(ReplyWords.of(reply)));
  }

  private Outcome unanswered() throws LinkException {
    return new Outcome.Failed(
        port.resynchronise()
            ? new Trouble.VehicleQuiet(SilenceCause.NO_ANSWER, "no end of the search")
            : new Trouble.AdapterMute());
  }

  private Outcome identify(Reply.Data first) throws LinkException {
    VehicleKnowledge vehicle =
        new VehicleKnowledge(port.format(), port.protocolNumber(), port.protocol());
    learnMap(vehicle, 0);
    // Once more: while a bus wakes up some control units are late.
    askMap(vehicle, 0);
    if (vehicle.units().isEmpty()) {
      return confused(first);
    }
    learnFurtherMaps(vehicle);
    learnVin(vehicle);
    return new Outcome.Found(vehicle);
  }

  private void learnFurtherMaps(VehicleKnowledge vehicle) throws LinkException {
    for (int map = SupportMap.STRIDE;
        map <= LAST_MAP && vehicle.isSupported(map);
        map += SupportMap.STRIDE) {
      learnFurtherMap(vehicle, map);
    }
  }

  /** Asks until every control unit that announced this map has told it, or enough times. */
  private void learnFurtherMap(VehicleKnowledge vehicle, int map) throws LinkException {
    Set<String> owing = vehicle.unitsThatSupport(map);
    for (int tries = 0; tries < MOST_TRIES && !owing.isEmpty(); tries++) {
      owing.removeAll(askMap(vehicle, map));
    }
  }

  /** Gives the control units that answered. */
  private Set<String> askMap(VehicleKnowledge vehicle, int map) throws LinkException {
    return isAnswered(Requests.currentData(List.of(map)), PATIENCE)
        ? learnMap(vehicle, map)
        : Set.of();
  }

  private boolean isAnswered(String request, Duration patience) throws LinkException {
    return port.ask(VehicleRequest.toEverybody(request), patience) instanceof Reply.Data;
  }

  /** Takes what the port's last reply says about a map. */
  private Set<String> learnMap(VehicleKnowledge vehicle, int map) {
    Set<String> answered = new TreeSet<>();
    for (Message message : port.messages().messages()) {
      if (Answers.toOne(map, message.payload()) instanceof Answer.CurrentData data) {
        answered.add(message.controlUnit());
        data.dataByParameter()
            .values()
            .forEach(bytes -> vehicle.unit(message.controlUnit()).learnSupport(map, bytes));
      }
    }
    return answered;
  }

  /** Silence once may be a lost answer; from a vehicle that does not tell it is silence twice. */
  private void learnVin(VehicleKnowledge vehicle) throws LinkException {
    for (int tries = 0; tries < TRIES_FOR_VIN && vehicle.vin().isEmpty(); tries++) {
      if (isAnswered(Requests.VEHICLE_IDENTIFICATION_NUMBER, LONG_PATIENCE)) {
        takeVin(vehicle, port.messages().messages());
      }
    }
  }

  private static void takeVin(VehicleKnowledge vehicle, List<Message> messages) {
    Map<String, List<Payload>> byUnit = new TreeMap<>();
    for (Message message : messages) {
      byUnit
          .computeIfAbsent(message.controlUnit(), unit -> new ArrayList<>())
          .add(message.payload());
    }
    byUnit.values().stream()
        .flatMap(payloads -> VehicleIdentification.read(payloads).stream())
        .findFirst()
        .ifPresent(vehicle::learnVin);
  }
}
