package steadypull.adapter;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.SerialCanCommand;
import steadypull.adapter.dialogue.SerialCanLine;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * The vehicle behind a serial CAN adapter: this program builds the frames itself. A frame that
 * nobody acknowledges is repeated by the adapter until its channel is closed: so it is closed where
 * a question may have found nobody, and opened with the next. Reader thread only.
 */
final class SerialCanVehicle implements VehiclePort {
  private static final Payload SUPPORT_MAP = Payload.ofHex("0100");

  private final SerialCanChannel channel;
  private final MessageBuffer messages = new MessageBuffer();
  private final WhoAnswers whoAnswers = new WhoAnswers();
  private CanBus bus = CanBus.SHORT_500;
  private long lastAnswerNanoTime;

  /** Bit rate of the open channel in kbit/s; 0 while it is closed. */
  private int openAt;

  SerialCanVehicle(SerialCanChannel channel) {
    this.channel = channel;
  }

  @Override
  public String address() {
    return channel.address();
  }

  @Override
  public Reply search(String firstProtocol) throws LinkException {
    return searchCan(firstProtocol, SUPPORT_MAP);
  }

  @Override
  public Reply searchCan(String firstProtocol, Payload question) throws LinkException {
    VehicleRequest request = new VehicleRequest(Optional.empty(), question, 0);
    Reply failure = new Reply.NotConnected();
    boolean isSoundSomewhere = false;
    whoAnswers.clear();
    close();
    for (CanBus next : CanBus.inOrder(firstProtocol)) {
      if (openAt > 0 && openAt != next.kilobits() && channel.hasTraffic()) {
        break; // Another rate would only disturb whoever talks here.
      }
      bus = next;
      Reply reply = ask(request, Duration.ZERO);
      if (!isQuiet(reply)) {
        return reply;
      }
      isSoundSomewhere |= reply instanceof Reply.NoData;
      failure = reply;
    }
    close();
    // Not left where nobody answered: the next request may come without a search.
    bus = CanBus.inOrder(firstProtocol).getFirst();
    // At a wrong rate every bus looks faulty: what was sound at one of them is.
    return isSoundSomewhere ? new Reply.NotConnected() : failure;
  }

  /** Whether the next way is worth a try. */
  private boolean isQuiet(Reply reply) {
    return channel.goesOn() && (reply instanceof Reply.NoData || reply instanceof Reply.BusFault);
  }

  /** Goes on the bus at its rate, if it is not; accepted, or what went wrong. */
  private Reply open() throws LinkException {
    if (openAt == bus.kilobits()) {
      return new Reply.Accepted();
    }
    close();
    channel.say(SerialCanCommand.NO_TIME_STAMPS);
    String rate = SerialCanCommand.bitRate(bus.kilobits());
    Reply reply = reply(rate, channel.say(rate));
    if (reply instanceof Reply.Accepted) {
      reply = reply(SerialCanCommand.OPEN, channel.open());
      openAt = reply instanceof Reply.Accepted ? bus.kilobits() : 0;
    }
    return reply;
  }

  private static Reply reply(String command, Optional<SerialCanLine> answer) {
    if (answer.isEmpty()) {
      return new Reply.Silence("");
    }
    return answer.get() instanceof SerialCanLine.Obeyed
        ? new Reply.Accepted()
        : new Reply.Unexpected("refusal of " + command);
  }

  /** Off the bus; a channel that is closed already refuses, which is as good. */
  private void close() throws LinkException {
    openAt = 0;
    channel.say(SerialCanCommand.CLOSE);
  }

  @Override
  public Reply ask(VehicleRequest request, Duration patience) throws LinkException {
    messages.clear();
    if (request.unit().isPresent() && !canAddress(request.unit().get())) {
      return new Reply.NotUnderstood();
    }
    Reply opened = open();
    if (!(opened instanceof Reply.Accepted)) {
      return opened;
    }
    SerialCanExchange exchange =
        new SerialCanExchange(channel, bus, request, whoAnswers.to(request.payload()), messages);
    Reply reply = exchange.run();
    for (Message message : messages.messages()) {
      whoAnswers.learn(request.payload(), message.controlUnit(), message.payload());
    }
    lastAnswerNanoTime = exchange.lastAnswerNanoTime();
    if (exchange.mayBeRepeated()) {
      close();
    }
    return reply;
  }

  @Override
  public MessageFormat format() {
    return bus.format();
  }

  @Override
  public String protocolNumber() {
    return bus.number();
  }

  @Override
  public String protocol() {
    return bus.inWords();
  }

  @Override
  public MessageBuffer messages() {
    return messages;
  }

  @Override
  public boolean canAddress(String unit) {
    return bus.canAddress(unit);
  }

  @Override
  public long lastTextNanoTime() {
    return lastAnswerNanoTime;
  }

  @Override
  public boolean resynchronise() throws LinkException {
    return channel.version().isPresent();
  }

  /** Such an adapter does not tell it, only that it is still there. */
  @Override
  public Reply askSupply() throws LinkException {
    return resynchronise() ? new Reply.NotUnderstood() : new Reply.Silence("");
  }

  @Override
  public void closeProtocol() throws LinkException {
    close();
  }
}
