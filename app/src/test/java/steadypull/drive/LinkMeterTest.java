package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripEvent;

class LinkMeterTest {
  private final LinkMeter meter = new LinkMeter();
  private final Map<Channel, Sample> latest = new HashMap<>();

  @Test
  void samplesAreCountedOverTheLastFiveSeconds() {
    for (int tenth = 0; tenth < 100; tenth++) {
      hear(Channels.ENGINE_SPEED, tenth * 100_000L);
    }

    assertThat(meter.summary(9_950_000, latest).samplesPerSecond()).isEqualTo(10);
    assertThat(meter.summary(14_950_000, latest).samplesPerSecond()).isZero();
  }

  @Test
  void aChannelThatIsDueEverySecondIsStaleAfterFive() {
    hear(Channels.ENGINE_COOLANT_TEMP, 1_000_000);

    assertThat(meter.summary(6_000_000, latest).freshChannels()).isEqualTo(1);
    assertThat(meter.summary(6_000_001, latest).freshChannels()).isZero();
  }

  // The grade is computed here; the vehicle offers two channels and both are fresh.
  @Test
  void onlyWhatIsHeardIsCounted() {
    meter.changed(new LinkEvent(0, LinkSummary.State.CONNECTED, "", 2));
    hear(Channels.ENGINE_SPEED, 1_000_000);
    hear(Channels.VEHICLE_SPEED, 1_000_000);
    latest.put(Channels.ROAD_GRADE, new Sample(Channels.ROAD_GRADE, 1_000_000, 1));

    assertThat(meter.summary(1_000_000, latest).freshChannels()).isEqualTo(2);
    assertThat(meter.summary(1_000_000, latest).expectedChannels()).isEqualTo(2);
  }

  // A receiver speaks on while the adapter is unplugged.
  @Test
  void positionsSayNothingOfTheLinkToTheVehicle() {
    hear(Channels.ENGINE_SPEED, 1_000_000);
    Channels.located().forEach(channel -> hear(channel, 9_000_000));

    assertThat(meter.secondsSilent(9_000_000)).isEqualTo(8);
    assertThat(meter.summary(9_000_000, latest).freshChannels()).isZero();
    assertThat(meter.summary(9_000_000, latest).samplesPerSecond()).isZero();
    assertThat(meter.summary(9_000_000, latest).expectedChannels()).isEqualTo(1);
  }

  @Test
  void outsideTemperatureMayBeOlderBecauseItIsAskedForSeldom() {
    hear(Channels.AMBIENT_AIR_TEMP, 1_000_000);

    assertThat(meter.summary(31_000_000, latest).freshChannels()).isEqualTo(1);
    assertThat(meter.summary(31_000_001, latest).freshChannels()).isZero();
  }

  @Test
  void silenceIsCountedFromTheLastSampleOfAnyChannel() {
    assertThat(meter.secondsSilent(3_000_000)).isEqualTo(3);

    hear(Channels.ENGINE_SPEED, 3_000_000);

    assertThat(meter.secondsSilent(3_000_000)).isZero();
    assertThat(meter.secondsSilent(8_500_000)).isEqualTo(5.5);
  }

  @Test
  void aLinkEventSurvivesTheLibrary() {
    LinkEvent event =
        new LinkEvent(
            12_000_000, LinkSummary.State.LOST, "Could not read \"/dev/ttyUSB0\": gone.", 17);

    assertThat(LinkEvent.of(event.toTripEvent())).isEqualTo(event);
  }

  @Test
  void anUnreadableLinkEventCountsAsALostLink() {
    TripEvent broken = new TripEvent(5, TripEvent.Kind.LINK, "{\"state\":\"DREAMING\"}");

    assertThat(LinkEvent.of(broken).state()).isEqualTo(LinkSummary.State.LOST);
  }

  private void hear(Channel channel, long timeMicros) {
    Sample sample = new Sample(channel, timeMicros, 1);
    latest.put(channel, sample);
    meter.heard(sample);
  }
}
