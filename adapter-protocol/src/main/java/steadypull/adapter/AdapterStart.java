package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.link.LinkException;

/**
 * Wakes an adapter, resets it and puts it into the working mode. The first thing said is the
 * question for the identity: harmless when it completes a half-typed line, and repeating it is
 * harmless too. Reader thread only.
 */
final class AdapterStart {
  private static final int WAKING_TRIES = 3;
  private static final Duration WAKING_PATIENCE = Duration.ofSeconds(1);
  private static final Duration RESET_PATIENCE = Duration.ofSeconds(4);
  private static final Duration SETTING_PATIENCE = Duration.ofSeconds(1);

  /** How a start ended. A closed set. */
  sealed interface Outcome {

    /** The adapter is in the working mode. */
    record Ready(String identity) implements Outcome {}

    /**
     * An adapter that cannot do what is needed.
     *
     * @param identity its name
     * @param command what it does not know
     */
    record Unfit(String identity, String command) implements Outcome {}

    /** Something answers, but not as an adapter does. */
    record NotAnAdapter(String heard) implements Outcome {}

    /** Nothing answers. */
    record Mute() implements Outcome {}
  }

  private final AdapterPort port;

  AdapterStart(AdapterPort port) {
    this.port = port;
  }

  /** Wakes, resets and sets up. */
  Outcome fromScratch() throws LinkException {
    String heard = "";
    for (int tries = 0; tries < WAKING_TRIES; tries++) {
      Reply reply = port.ask(WorkingMode.IDENTIFY, WAKING_PATIENCE);
      if (!(reply instanceof Reply.Silence(String instead))) {
        return reset(WorkingMode.FULL_RESET);
      }
      heard = instead.isEmpty() ? heard : instead;
    }
    return heard.isEmpty() ? new Outcome.Mute() : new Outcome.NotAnAdapter(heard);
  }

  /** Resets and sets up; a command that the adapter does not know is replaced by the full reset. */
  Outcome reset(String command) throws LinkException {
    Reply reply = port.ask(command, RESET_PATIENCE);
    if (reply instanceof Reply.NotUnderstood && !command.equals(WorkingMode.FULL_RESET)) {
      return reset(WorkingMode.FULL_RESET);
    }
    if (reply instanceof Reply.Silence && !port.resynchronise()) {
      return new Outcome.Mute();
    }
    Optional<Outcome> refusal = setUp();
    return refusal.isPresent() ? refusal.get() : new Outcome.Ready(identity());
  }

  /** Makes all settings; gives the outcome where one that matters was not accepted. */
  private Optional<Outcome> setUp() throws LinkException {
    for (WorkingMode.Setting setting : WorkingMode.SETTINGS) {
      Reply reply = port.ask(setting.command(), SETTING_PATIENCE);
      if (!suffices(setting.need(), reply)) {
        reply = port.ask(setting.command(), SETTING_PATIENCE);
      }
      if (!suffices(setting.need(), reply)) {
        return Optional.of(refusal(setting.command(), reply));
      }
    }
    return Optional.empty();
  }

  private static boolean suffices(WorkingMode.Need need, Reply reply) {
    return switch (need) {
      case OBEYED -> reply instanceof Reply.Accepted;
      case ANSWERED -> reply instanceof Reply.Accepted || reply instanceof Reply.NotUnderstood;
      case WANTED -> true;
    };
  }

  private Outcome refusal(String command, Reply reply) throws LinkException {
    return reply instanceof Reply.NotUnderstood
        ? new Outcome.Unfit(identity(), command)
        : new Outcome.NotAnAdapter(ReplyWords.of(reply) + " to " + command);
  }

  private String identity() throws LinkException {
    return port.ask(WorkingMode.IDENTIFY, SETTING_PATIENCE) instanceof Reply.Text(String text)
        ? text
        : "an adapter without a name";
  }
}
