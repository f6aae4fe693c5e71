package steadypull.compare;

import java.util.Optional;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.RunStart.Known;

/** Why a run cannot be compared whatever the others are. */
final class Refusal {
  /** A run with more silence says what was not heard. */
  private static final double HEARD_SHARE = 0.8;

  /** An engine that is not warm puts its heat into itself (common practice, no source). */
  private static final double WARM_CELSIUS = 70;

  /** What a cold engine's heat goes into first; charge air and its coolant do not wait for it. */
  private static final Set<Channel> WARM =
      Set.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private Refusal() {}

  /** The reason in a sentence; empty if there is none. */
  static Optional<String> of(Run run, Stretch stretch, Channel channel, RunWords words) {
    if (stretch.beginning() == Stretch.Beginning.SILENT) {
      return Optional.of(words.say("refusal.onset"));
    }
    if (run.start().regeneration() == Known.YES) {
      return Optional.of(words.say("refusal.regeneration"));
    }
    long heard = Figures.count(run.series().span(channel, 0, run.loadSeconds()));
    if (heard < HEARD_SHARE * run.loadSeconds()) {
      return Optional.of(
          words.say("refusal.silent", words.name(channel), heard, run.loadSeconds()));
    }
    return WARM.contains(channel) ? cold(run, words) : Optional.empty();
  }

  private static Optional<String> cold(Run run, RunWords words) {
    Double celsius = run.start().temperaturesCelsius().get(Channels.ENGINE_COOLANT_TEMP);
    return celsius != null && celsius < WARM_CELSIUS
        ? Optional.of(
            words.say(
                "refusal.cold",
                words.number(celsius, 0) + " degC",
                words.number(WARM_CELSIUS, 0) + " degC"))
        : Optional.empty();
  }
}
