package steadypull.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * A second table on a trip: what a roller or a box of thermocouples wrote on a clock of its own,
 * brought onto the trip by engine speed, which both tell. A closed set of what comes out.
 */
public sealed interface SecondTable {
  /**
   * The trip with what the table adds.
   *
   * @param trip channels of the table that the trip does not tell, and its power and torque at the
   *     wheels, on the trip's clock
   * @param lagSeconds of the trip at which the table begins; below 0 if it began before the trip
   * @param errorSeconds the lag errs by no more, nineteen times in twenty
   * @param correlation of the two engine speeds, 0.9 to 1
   * @param added channels that came from the table
   */
  record Joined(
      TripSeconds trip,
      double lagSeconds,
      double errorSeconds,
      double correlation,
      List<Channel> added)
      implements SecondTable {
    public Joined {
      added = List.copyOf(added);
    }

    /** What to say of it beside the comparison. */
    public String sentence(RunWords words) {
      return words.say(
          lagSeconds < 0 ? "second.before" : "second.into",
          words.number(Math.abs(lagSeconds), 1),
          words.number(errorSeconds, 1),
          words.number(correlation, 3),
          String.join(", ", added.stream().map(words::name).toList()));
    }
  }

  /**
   * They do not fit.
   *
   * @param reason what was tried, expected and found, and what to do
   */
  record Refused(String reason) implements SecondTable {}

  /** What a power at the wheels is told by: a roller's own goes before a computed one. */
  List<Channel> OF_ROLLERS = List.of(Channels.WHEEL_POWER, Channels.WHEEL_TORQUE);

  /**
   * Brings a table onto a trip.
   *
   * @param trip that tells engine speed
   * @param table likewise, on a clock of its own
   */
  static SecondTable join(TripSeconds trip, TripSeconds table) {
    SpeedFit fit =
        new SpeedFit(
            trip.span(Channels.ENGINE_SPEED, 0, trip.seconds()),
            table.span(Channels.ENGINE_SPEED, 0, table.seconds()));
    Optional<String> fault = fit.fault();
    if (fault.isPresent()) {
      return new Refused(
          "Could not bring %s onto %s: expected engine speed in both that changes alike, found %s."
                  .formatted(table.name(), trip.name(), fault.get())
              + " Let the engine speed up and down twice while both write, or name the right"
              + " table.");
    }
    Map<Channel, double[]> more = new LinkedHashMap<>();
    for (Channel channel : table.channels()) {
      boolean isNew = !trip.channels().contains(channel) || OF_ROLLERS.contains(channel);
      if (isNew) {
        more.put(channel, shifted(table, channel, fit.lagSeconds(), trip.seconds()));
      }
    }
    return new Joined(
        trip.with(more),
        fit.lagSeconds(),
        fit.errorSeconds(),
        fit.correlation(),
        List.copyOf(more.keySet()));
  }

  private static double[] shifted(
      TripSeconds table, Channel channel, double lagSeconds, int seconds) {
    double[] column = table.span(channel, 0, table.seconds());
    double[] shifted = new double[seconds];
    for (int second = 0; second < seconds; second++) {
      shifted[second] = SpeedFit.between(column, second - lagSeconds);
    }
    return shifted;
  }
}
