package steadypull.backtest;

import java.util.ArrayList;
import java.util.List;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.channel.Channel;

/**
 * An advisory that asked for something: what it was about, and from when to when it stood.
 *
 * @param channel that it spoke of when it was raised
 * @param limit of that channel, degC
 * @param from second at which it was raised
 * @param until second at which it was cleared; after the drive's end if it never was
 */
record Raised(Channel channel, double limit, int from, int until) {
  /** What the rules said: raised events of caution or warning that carry a time to the limit. */
  static List<Raised> by(WorldDrive drive) {
    List<Raised> raised = new ArrayList<>();
    AdviceEvent open = null;
    for (AdviceEvent event : drive.events()) {
      boolean isAsking =
          event.level().filter(level -> level != Level.NOTICE).isPresent()
              && event.channel().isPresent();
      if (!isAsking) {
        continue;
      }
      switch (event.kind()) {
        case RAISED -> open = event.secondsToLimit().isPresent() ? event : open;
        case CLEARED -> {
          if (open != null) {
            raised.add(of(open, (int) (event.timeMicros() / 1_000_000)));
          }
          open = null;
        }
        case ESCALATED,
            EASED,
            ACKNOWLEDGED,
            SHELVED,
            UNSHELVED,
            DERATE_BEGAN,
            DERATE_ENDED,
            POWER_LIMITED -> {}
      }
    }
    if (open != null) {
      raised.add(of(open, drive.seconds() + 1));
    }
    return raised;
  }

  private static Raised of(AdviceEvent event, int until) {
    return new Raised(
        event.channel().orElseThrow(),
        event.limit().orElseThrow(),
        (int) (event.timeMicros() / 1_000_000),
        until);
  }
}
