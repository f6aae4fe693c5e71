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

    /**
     * The adapter is in the working mode.
     *
     * @param identity its name
     * @param showsSenders whether it agreed to show who answers
     * @param vehicle what it leads to
     */
    record Ready(String identity, boolean showsSenders, VehiclePort vehicle) implements Outcome {}

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
      Optional<SerialCanChannel> serialCan = port.findSerialCan();
      if (serialCan.isPresent()) {
        return serialCan(serialCan.get());
      }
      heard = instead.isEmpty() ? heard : instead;
    }
    return heard.isEmpty() ? new Outcome.Mute() : new Outcome.NotAnAdapter(heard);
  }

  /** The other kind of adapter: it needs no setting up before a search. */
  private static Outcome serialCan(SerialCanChannel channel) throws LinkException {
    Optional<String> version = channel.version();
    return version.isPresent()
        ? new Outcome.Ready(
            "serial CAN, version " + version.get(),
            /* showsSenders= */ true,
            new IdentifierVehicle(new SerialCanVehicle(channel)))
        : new Outcome.Mute();
  }

  /** Resets and sets up; a command that the adapter does not know is replaced by the full reset. */
  Outcome reset(String command) throws LinkException {
    if (port.serialCan().isPresent()) {
      return serialCan(port.serialCan().get());
    }
    Reply reply = port.ask(command, RESET_PATIENCE);
    if (reply instanceof Reply.NotUnderstood && !command.equals(WorkingMode.FULL_RESET)) {
      return reset(WorkingMode.FULL_RESET);
    }
    if (reply instanceof Reply.Silence && !port.resynchronise()) {
      return new Outcome.Mute();
    }
    boolean showsSenders = true;
    for (WorkingMode.Setting setting : WorkingMode.SETTINGS) {
      Reply answer = set(setting);
      if (setting.need() != WorkingMode.Need.WANTED && !isAnswer(answer)) {
        return new Outcome.NotAnAdapter(ReplyWords.of(answer) + " to " + setting.command());
      }
      boolean isRefused = answer instanceof Reply.NotUnderstood;
      showsSenders &= !(isRefused && setting.command().equals(WorkingMode.SHOW_SENDERS));
    }
    return new Outcome.Ready(
        identity(), showsSenders, new IdentifierVehicle(new AdapterVehicle(port, showsSenders)));
  }

  /** Makes one setting; a second try where the first was not heard well. */
  private Reply set(WorkingMode.Setting setting) throws LinkException {
    Reply answer = port.ask(setting.command(), SETTING_PATIENCE);
    boolean isSettled =
        switch (setting.need()) {
          case ANSWERED -> isAnswer(answer);
          case ANSWERED_TWICE -> answer instanceof Reply.Accepted;
          case WANTED -> true;
        };
    return isSettled ? answer : port.ask(setting.command(), SETTING_PATIENCE);
  }

  private static boolean isAnswer(Reply reply) {
    return reply instanceof Reply.Accepted || reply instanceof Reply.NotUnderstood;
  }

  private String identity() throws LinkException {
    return port.ask(WorkingMode.IDENTIFY, SETTING_PATIENCE) instanceof Reply.Text(String text)
        ? text
        : "an adapter without a name";
  }
}
