package steadypull.drive;

import java.util.Optional;

/** Puts a state of the link that keeps readings away into one clear message. */
final class LinkTrouble {
  private LinkTrouble() {}

  /** The message, or empty if the state is none to worry about. */
  static Optional<String> of(LinkEvent event) {
    return switch (event.state()) {
      case LOST -> Optional.of(event.detail());
      case VEHICLE_SILENT ->
          adapterAnswers(
              event,
              "no vehicle does. Switch the ignition on, seat the plug firmly, and try again.");
      case BUS_FAULT ->
          adapterAnswers(
              event,
              "the vehicle's bus does not carry. Switch the ignition on, seat the plug firmly, and"
                  + " try again.");
      case BUS_BUSY ->
          adapterAnswers(
              event,
              "it finds no gap on the vehicle's bus. Seat the plug firmly; if it stays so, have the"
                  + " plug's wiring checked.");
      case ADAPTER_FAULT ->
          adapterAnswers(
              event,
              "it reports a fault of its own, also after a reset. Unplug it and plug it in again,"
                  + " or use another one.");
      case ENGINE_OFF -> adapterAnswers(event, "the engine is off. Start the engine.");
      case OPENING, SEARCHING, CONNECTED, CLOSED -> Optional.empty();
    };
  }

  private static Optional<String> adapterAnswers(LinkEvent event, String but) {
    return Optional.of("The adapter \"%s\" answers, but %s".formatted(event.detail(), but));
  }
}
