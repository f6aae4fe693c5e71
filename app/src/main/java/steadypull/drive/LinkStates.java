package steadypull.drive;

import steadypull.adapter.LinkState;
import steadypull.adapter.SilenceCause;
import steadypull.channel.Channel;
import steadypull.store.LinkIdentity;
import steadypull.vehicle.VehicleNumberHash;

/** Translates the adapter's link states into those that a trip keeps. */
final class LinkStates {
  private LinkStates() {}

  static LinkEvent event(LinkState state, long timeMicros, SensorRoles roles) {
    return switch (state) {
      case LinkState.Opening opening ->
          event(timeMicros, LinkSummary.State.OPENING, opening.address(), 0);
      case LinkState.Searching searching ->
          event(timeMicros, LinkSummary.State.SEARCHING, searching.adapter(), 0);
      case LinkState.Connected connected ->
          event(
              timeMicros,
              LinkSummary.State.CONNECTED,
              connected.adapter() + ", " + connected.protocol(),
              channels(connected, roles));
      case LinkState.VehicleSilent silent ->
          event(timeMicros, stateOf(silent.cause()), silent.adapter(), 0);
      // Without the voltage: each tenth of a volt would be a change of the link.
      case LinkState.Resting resting ->
          event(timeMicros, LinkSummary.State.ENGINE_OFF, resting.adapter(), 0);
      case LinkState.Lost lost -> event(timeMicros, LinkSummary.State.LOST, lost.reason(), 0);
      case LinkState.Closed closed -> event(timeMicros, LinkSummary.State.CLOSED, "", 0);
    };
  }

  /** Who answers; the vehicle's number only as a hash. */
  static LinkIdentity whoAnswers(LinkState.Connected connected) {
    return new LinkIdentity(
        FaultText.printable(connected.adapter()),
        FaultText.printable(connected.protocol()),
        VehicleNumberHash.of(connected.vin()));
  }

  private static LinkSummary.State stateOf(SilenceCause cause) {
    return switch (cause) {
      case NO_ANSWER -> LinkSummary.State.VEHICLE_SILENT;
      case BUS_FAULT -> LinkSummary.State.BUS_FAULT;
      case BUS_BUSY -> LinkSummary.State.BUS_BUSY;
      case ADAPTER_FAULT -> LinkSummary.State.ADAPTER_FAULT;
    };
  }

  private static LinkEvent event(
      long timeMicros, LinkSummary.State state, String detail, int expected) {
    return new LinkEvent(timeMicros, state, FaultText.printable(detail), expected);
  }

  private static int channels(LinkState.Connected connected, SensorRoles roles) {
    return (int)
        connected.signals().stream()
            .flatMap(key -> roles.channelsOf(key).stream())
            .map(Channel::id)
            .distinct()
            .count();
  }
}
