package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverState;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Translates what a satellite receiver tells. Only what was measured becomes samples; speed stays
 * the vehicle's. Stateless.
 */
final class Positions {
  private Positions() {}

  /** The samples of a report at a moment of the trip; none if the receiver knows no place. */
  static List<Sample> samples(PositionReport report, long timeMicros) {
    return switch (report) {
      case PositionReport.Unfixed unfixed -> List.of();
      case PositionReport.Fixed fixed ->
          fixed.quality().isMeasured() ? measured(fixed, timeMicros) : List.of();
    };
  }

  private static List<Sample> measured(PositionReport.Fixed fixed, long timeMicros) {
    List<Sample> samples = new ArrayList<>();
    samples.add(new Sample(Channels.LATITUDE, timeMicros, fixed.latitudeDegrees()));
    samples.add(new Sample(Channels.LONGITUDE, timeMicros, fixed.longitudeDegrees()));
    Channel altitude = Channels.ALTITUDE;
    fixed
        .altitudeMetres()
        .ifPresent(metres -> samples.add(new Sample(altitude, timeMicros, metres)));
    return samples;
  }

  /** Whether the receiver's clock keeps pace with the link's again, or no longer. */
  static ReceiverNews paceNews(boolean isInPace, long timeMicros) {
    return new ReceiverNews(
        timeMicros, isInPace ? ReceiverNews.State.LOCATED : ReceiverNews.State.OUT_OF_PACE, "");
  }

  static ReceiverNews news(ReceiverState state, long timeMicros) {
    return switch (state) {
      case ReceiverState.Absent(String reason) ->
          new ReceiverNews(timeMicros, ReceiverNews.State.ABSENT, FaultText.printable(reason));
      case ReceiverState.Unfixed unfixed ->
          new ReceiverNews(timeMicros, ReceiverNews.State.SEARCHING, "");
      case ReceiverState.Fixed fixed ->
          new ReceiverNews(timeMicros, ReceiverNews.State.LOCATED, "");
      case ReceiverState.Closed closed ->
          new ReceiverNews(timeMicros, ReceiverNews.State.CLOSED, "");
    };
  }
}
