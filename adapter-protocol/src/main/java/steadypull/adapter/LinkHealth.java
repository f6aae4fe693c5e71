package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.dialogue.Reply;

/**
 * Counts what goes wrong between good answers and says when enough is enough. A single missing
 * answer means little; an adapter that lost its settings must be set up again at once. Reader
 * thread only.
 */
final class LinkHealth {
  private static final int FAILURES_BEFORE_TROUBLE = 5;
  private static final Duration SPAN_BEFORE_TROUBLE = Duration.ofSeconds(3);
  private static final int CONFUSIONS_BEFORE_TROUBLE = 3;

  private int failures;
  private int confusions;
  private long lastGoodNanoTime;

  LinkHealth(long nowNanoTime) {
    lastGoodNanoTime = nowNanoTime;
  }

  void good(long nowNanoTime) {
    failures = 0;
    confusions = 0;
    lastGoodNanoTime = nowNanoTime;
  }

  /** Takes a reply to a vehicle request that brought nothing; whether the prompt came or not. */
  Optional<Trouble> bad(Reply reply, long nowNanoTime) {
    return switch (reply) {
      case Reply.Restarted restarted -> Optional.of(new Trouble.AdapterRestarted(restarted.text()));
      case Reply.Unexpected unexpected -> confused(reply);
      case Reply.Accepted accepted -> confused(reply);
      case Reply.Text text -> confused(reply);
      case Reply.Data unreadable -> failed(nowNanoTime, reply);
      case Reply.NoData none -> failed(nowNanoTime, reply);
      case Reply.NotUnderstood unknown -> failed(nowNanoTime, reply);
      case Reply.NotConnected none -> failed(nowNanoTime, reply);
      case Reply.BusFault fault -> failed(nowNanoTime, reply);
      case Reply.Overflowed full -> failed(nowNanoTime, reply);
      case Reply.Damaged damaged -> failed(nowNanoTime, reply);
      case Reply.Stopped stopped -> failed(nowNanoTime, reply);
      case Reply.Silence silence -> failed(nowNanoTime, reply);
    };
  }

  private Optional<Trouble> confused(Reply reply) {
    confusions++;
    return confusions >= CONFUSIONS_BEFORE_TROUBLE
        ? Optional.of(new Trouble.AdapterConfused(ReplyWords.of(reply)))
        : Optional.empty();
  }

  private Optional<Trouble> failed(long nowNanoTime, Reply reply) {
    failures++;
    boolean isEnough =
        failures >= FAILURES_BEFORE_TROUBLE
            && nowNanoTime - lastGoodNanoTime >= SPAN_BEFORE_TROUBLE.toNanos();
    if (!isEnough) {
      return Optional.empty();
    }
    return Optional.of(
        reply instanceof Reply.Data || reply instanceof Reply.NotUnderstood
            ? new Trouble.AdapterConfused(ReplyWords.of(reply))
            : new Trouble.VehicleQuiet(SilenceCause.of(reply), ReplyWords.of(reply)));
  }
}
