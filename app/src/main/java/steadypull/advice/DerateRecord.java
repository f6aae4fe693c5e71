package steadypull.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.thermal.Derate;

/** Turns the derate detector's state into events: what the engine did, whatever the rules say. */
final class DerateRecord {
  private Derate before = new Derate.None();

  /**
   * Takes the next second.
   *
   * @param codes what is said of the stored codes; may be empty
   */
  List<AdviceEvent> step(SituationFacts facts, String codes) {
    Derate now = facts.situation().derate();
    Optional<Channel> causeBefore = cause(before);
    Optional<Channel> causeNow = cause(now);
    List<AdviceEvent> events = new ArrayList<>();
    if (causeBefore.isPresent() && causeNow.isEmpty()) {
      events.add(EventFigures.ofChannel(facts, AdviceEvent.Kind.DERATE_ENDED, causeBefore.get()));
    }
    if (causeBefore.isEmpty() && causeNow.isPresent()) {
      events.add(EventFigures.ofChannel(facts, AdviceEvent.Kind.DERATE_BEGAN, causeNow.get()));
    }
    if (now instanceof Derate.PowerLimited && !(before instanceof Derate.PowerLimited)) {
      events.add(EventFigures.ofVehicle(facts.timeMicros(), AdviceEvent.Kind.POWER_LIMITED, codes));
    }
    before = now;
    return events;
  }

  private static Optional<Channel> cause(Derate derate) {
    return switch (derate) {
      case Derate.None _ -> Optional.empty();
      case Derate.Active active -> Optional.of(active.cause());
      case Derate.PowerLimited _ -> Optional.empty();
    };
  }
}
