package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceLine;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** An engine that is switched off falls silent and worries nobody; a link that breaks does. */
class SwitchedOffTest {
  private static final int SILENT_FROM = 60;

  private final Heard heard = new Heard();
  private final DrivePipeline pipeline =
      new DrivePipeline(
          DemoDrives.ENGLISH.setup(Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR), false),
          DemoDrives.START,
          heard);

  @Test
  void anEngineSwitchedOffAtARestingPlaceIsNotMissed() {
    drive(0, 650);
    fallSilent(LinkSummary.State.SEARCHING, LinkSummary.State.VEHICLE_SILENT);

    assertThat(linkLost()).isEmpty();
    assertThat(lines()).doesNotContain(AdviceLine.State.LINK_LOST);
  }

  @Test
  void aVehicleThatFallsSilentOnTheRoadIsMissed() {
    drive(80, 1800);
    fallSilent(LinkSummary.State.SEARCHING, LinkSummary.State.VEHICLE_SILENT);

    assertThat(linkLost()).hasSize(1);
    assertThat(linkLost().getFirst().timeMicros())
        .isBetween((SILENT_FROM + 4) * 1_000_000L, (SILENT_FROM + 6) * 1_000_000L);
    assertThat(lines()).contains(AdviceLine.State.LINK_LOST);
  }

  /** The engine may be idling hot behind an adapter that was pulled out. */
  @Test
  void anAdapterThatGoesAwayIsMissedEvenWhileTheVehicleStands() {
    drive(0, 650);
    fallSilent(LinkSummary.State.LOST);

    assertThat(linkLost()).hasSize(1);
  }

  @Test
  void aVehicleThatDoesNotTellItsSpeedIsMissed() {
    for (int second = 0; second < SILENT_FROM; second++) {
      hear(Channels.ENGINE_SPEED, second, 650);
    }
    fallSilent(LinkSummary.State.VEHICLE_SILENT);

    assertThat(linkLost()).hasSize(1);
  }

  @Test
  void afterTheEngineWasStartedAgainABrokenLinkIsMissed() {
    drive(0, 650);
    fallSilent(LinkSummary.State.VEHICLE_SILENT);
    change(LinkSummary.State.CONNECTED, 130);
    for (int second = 130; second < 160; second++) {
      hear(Channels.ENGINE_SPEED, second, 1800);
      hear(Channels.VEHICLE_SPEED, second, 60);
    }
    change(LinkSummary.State.LOST, 161);
    pipeline.advanceTo(180_000_000);

    assertThat(linkLost()).hasSize(1);
  }

  private void drive(double kilometresPerHour, double turnsPerMinute) {
    change(LinkSummary.State.CONNECTED, 0);
    for (int second = 0; second < SILENT_FROM; second++) {
      hear(Channels.ENGINE_SPEED, second, turnsPerMinute);
      hear(Channels.VEHICLE_SPEED, second, kilometresPerHour);
    }
  }

  private void fallSilent(LinkSummary.State... states) {
    int second = SILENT_FROM + 4;
    for (LinkSummary.State state : states) {
      change(state, second);
      second += 5;
    }
    pipeline.advanceTo((SILENT_FROM + 60) * 1_000_000L);
  }

  private void change(LinkSummary.State state, int second) {
    LinkEvent event = new LinkEvent(second * 1_000_000L, state, "", 2);
    pipeline.accept(new TripEntry.OfEvent(event.toTripEvent()));
  }

  private void hear(Channel channel, int second, double value) {
    pipeline.accept(new TripEntry.OfSample(new Sample(channel, second * 1_000_000L, value)));
  }

  private List<AdviceEvent> linkLost() {
    return heard.advice.stream()
        .filter(event -> event.kind() == AdviceEvent.Kind.RAISED)
        .filter(event -> event.rule().equals(Optional.of("link-lost")))
        .toList();
  }

  private List<AdviceLine.State> lines() {
    return heard.seconds.stream().map(each -> each.advice().state()).distinct().toList();
  }
}
