package steadypull.drive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.stream.Stream;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.store.TripEvent;

/** What a driver was told on a drive, as its trip has kept it. Stateless. */
final class KeptAdvice {
  private static final ObjectMapper JSON = new ObjectMapper();

  private KeptAdvice() {}

  /** Seconds at which advice was raised that asks the driver to act, in order. */
  static List<Integer> raisedSeconds(List<TripEvent> events) {
    return events.stream()
        .filter(event -> event.kind() == TripEvent.Kind.ADVICE)
        .flatMap(KeptAdvice::raisedSecond)
        .toList();
  }

  /** How often events of a kind were kept. */
  static int count(List<TripEvent> events, AdviceEvent.Kind kind) {
    return (int)
        events.stream()
            .filter(event -> event.kind() == TripEvent.Kind.ADVICE)
            .filter(event -> word(event).equals(kind.word()))
            .count();
  }

  private static String word(TripEvent event) {
    try {
      return JSON.readTree(event.detail()).path("event").asText();
    } catch (JsonProcessingException unreadable) {
      // What cannot be read tells nothing.
      return "";
    }
  }

  private static Stream<Integer> raisedSecond(TripEvent event) {
    try {
      JsonNode said = JSON.readTree(event.detail());
      String level = said.path("level").asText();
      boolean isAsking =
          said.path("event").asText().equals(AdviceEvent.Kind.RAISED.word())
              && (level.equals(Level.CAUTION.word()) || level.equals(Level.WARNING.word()));
      return isAsking ? Stream.of((int) (event.timeMicros() / 1_000_000)) : Stream.empty();
    } catch (JsonProcessingException unreadable) {
      // What cannot be read asked nobody for anything.
      return Stream.empty();
    }
  }
}
