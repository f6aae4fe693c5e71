package steadypull.adapter;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.frame.BareLines;
import steadypull.adapter.frame.FrameReader;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * The vehicle behind an AT-command adapter in the working mode. Made anew whenever the adapter was
 * started: then requests go to everybody. Reader thread only.
 */
final class AdapterVehicle implements VehiclePort {
  /** An adapter's own search may take 20 s. */
  private static final Duration SEARCH_PATIENCE = Duration.ofSeconds(25);

  private static final Duration PATIENCE = Duration.ofSeconds(3);

  /** For what an adapter answers by itself, without the vehicle. */
  static final Duration SETTING_PATIENCE = Duration.ofSeconds(1);

  private static final Payload SUPPORT_MAP = Payload.ofHex("0100");

  private final AdapterPort port;
  private final MessageBuffer messages = new MessageBuffer();
  private final FrameReader frames = new FrameReader(messages);
  private final AdapterPort.PlainReply plain = frames::readPlain;
  private final ResponseCounts counts;
  private final AnswerTimes times;
  private final Addressee addressee;
  private final RequestLines lines = new RequestLines();
  private final boolean showsSenders;
  private boolean isBare;
  private MessageFormat format = MessageFormat.CAN_11_BIT;
  private String protocolNumber = "";
  private String protocol = "";

  /**
   * Makes the view of a vehicle through a ready adapter.
   *
   * @param showsSenders whether the adapter agreed to show who answers
   */
  AdapterVehicle(AdapterPort port, boolean showsSenders) {
    this.port = port;
    this.counts = new ResponseCounts(port.lastTextNanoTime());
    this.times = new AnswerTimes(port.lastTextNanoTime());
    this.addressee = new Addressee(port);
    this.showsSenders = showsSenders;
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public Reply search(String firstProtocol) throws LinkException {
    messages.clear();
    addressee.widen();
    addressee.everybody(format);
    port.ask(WorkingMode.search(firstProtocol), PATIENCE);
    return found(port.ask(SUPPORT_MAP.toString(), SEARCH_PATIENCE), SUPPORT_MAP);
  }

  @Override
  public Reply searchCan(String firstProtocol, Payload question) throws LinkException {
    Reply reply = new Reply.NotConnected();
    for (CanBus bus : CanBus.inOrder(firstProtocol)) {
      messages.clear();
      addressee.widen();
      addressee.everybody(format);
      // Fixed: an adapter's own search asks for service 01.
      port.ask(WorkingMode.fixed(bus.number()), PATIENCE);
      reply = port.ask(question.toString(), PATIENCE);
      if (!isQuiet(reply)) {
        return found(reply, question);
      }
    }
    // Not left where nobody answered: the next request may come without a search.
    port.ask(WorkingMode.search(firstProtocol), PATIENCE);
    return reply;
  }

  /** Whether nobody answers over this protocol, while others may be tried. */
  private static boolean isQuiet(Reply reply) {
    return reply instanceof Reply.NoData
        || reply instanceof Reply.NotConnected
        || reply instanceof Reply.BusFault;
  }

  /** Learns how the vehicle is spoken to from the reply to a question to everybody. */
  private Reply found(Reply reply, Payload question) throws LinkException {
    if (!(reply instanceof Reply.Data data)) {
      return taken(reply);
    }
    isBare = !showsSenders || data.lines().stream().allMatch(MessageFormat::isBareSupportMap);
    protocolNumber = askProtocolNumber();
    format =
        MessageFormat.ofProtocol(protocolNumber)
            .orElseGet(() -> MessageFormat.ofLine(data.lines().getFirst()));
    protocol = text(WorkingMode.PROTOCOL_TEXT);
    port.leaveAfterAnswers(format.gapAfterAnswers());
    return isBare && format.isCan() ? narrowed(reply, question) : taken(reply);
  }

  /**
   * Where nobody shows who answers, only the engine's control unit is asked, so that it is known. A
   * vehicle on which that does not work must have one control unit only.
   */
  private Reply narrowed(Reply toAll, Payload question) throws LinkException {
    String engine = format == MessageFormat.CAN_29_BIT ? "18DA10F1" : "7E0";
    if (addressee.unit(engine) instanceof Reply.Accepted) {
      Reply reply = taken(port.ask(question.toString(), PATIENCE));
      if (messages.count() > 0) {
        addressee.narrowTo(engine);
        return reply;
      }
      addressee.everybody(format);
    }
    Reply reply = taken(toAll);
    return messages.count() > 0
        ? reply
        : new Reply.Unexpected("answers of several control units without their addresses");
  }

  /** The digit after the letter that marks automatic choice; empty text if not told. */
  private String askProtocolNumber() throws LinkException {
    String text = text(WorkingMode.PROTOCOL_NUMBER);
    String digit = text.startsWith("A") ? text.substring(1) : text;
    return digit.matches("[1-9]") ? digit : "";
  }

  private String text(String command) throws LinkException {
    return port.ask(command, PATIENCE) instanceof Reply.Text(String text) ? text : "";
  }

  private Reply taken(Reply reply) {
    messages.clear();
    if (reply instanceof Reply.Data data && isBare) {
      BareLines.read(data.lines(), format.engineUnit(), messages);
      dropIfAmbiguous();
    } else if (reply instanceof Reply.Data data) {
      frames.begin(format);
      data.lines().forEach(frames::readLine);
    }
    return reply;
  }

  /** Two answers to one question on CAN are two control units', and nobody knows whose is which. */
  private void dropIfAmbiguous() {
    Set<Payload> beginnings = new HashSet<>();
    for (Message message : messages.messages()) {
      Payload payload = message.payload();
      boolean isFirst = beginnings.add(payload.slice(0, Math.min(2, payload.size())));
      if (!isFirst && format.isCan()) {
        messages.clear();
      }
    }
  }

  @Override
  public Reply ask(VehicleRequest request, Duration patience) throws LinkException {
    frames.begin(format);
    Reply addressed =
        request.unit().isEmpty()
            ? addressee.everybody(format)
            : addressee.unit(request.unit().get());
    if (!(addressed instanceof Reply.Accepted)) {
      return addressed;
    }
    setTimeout();
    return request.answerBytes() == 0 || isBare
        ? send(request.payload(), 0, patience)
        : askForOneAnswer(request, patience);
  }

  /**
   * Lets the adapter wait as long as this vehicle needs; not on the buses with times of their own.
   */
  private void setTimeout() throws LinkException {
    int wanted = times.wanted();
    if (format.isCan() && wanted != times.present()) {
      port.ask(WorkingMode.timeout(wanted), SETTING_PATIENCE);
      times.told(wanted);
    }
  }

  private Reply askForOneAnswer(VehicleRequest request, Duration patience) throws LinkException {
    int lines = format.lines(request.answerBytes());
    int count = counts.countFor(lines, port.lastTextNanoTime());
    Reply reply = send(request.payload(), count, patience);
    if (count == 0) {
      counts.noteUncounted(messages);
    } else if (!counts.isBelievable(count, reply, messages)) {
      reply = send(request.payload(), 0, patience);
    }
    if (reply instanceof Reply.NoData) {
      times.missed();
    }
    return reply;
  }

  private Reply send(Payload payload, int count, Duration patience) throws LinkException {
    frames.begin(format);
    Reply reply =
        port.askVehicle(
            lines.line(payload, count), patience, isBare ? AdapterPort.PlainReply.NONE : plain);
    if (reply instanceof Reply.Data) {
      long arrival = port.lastTextNanoTime();
      times.answered(arrival - port.lastRequestNanoTime(), arrival);
    }
    if (!isPlain(reply)) {
      return taken(reply);
    }
    return messages.count() > 0 ? reply : taken(port.lastReply());
  }

  private static boolean isPlain(Reply reply) {
    return reply instanceof Reply.Data data && data.lines().isEmpty();
  }

  @Override
  public MessageFormat format() {
    return format;
  }

  @Override
  public String protocolNumber() {
    return protocolNumber;
  }

  @Override
  public String protocol() {
    return protocol;
  }

  @Override
  public MessageBuffer messages() {
    return messages;
  }

  @Override
  public boolean canAddress(String unit) {
    return format.canAddress(unit) && !addressee.isRefused(unit);
  }

  @Override
  public long lastTextNanoTime() {
    return port.lastTextNanoTime();
  }

  @Override
  public boolean resynchronise() throws LinkException {
    return port.resynchronise();
  }

  @Override
  public boolean tellsRestart() throws LinkException {
    return port.tellsRestart();
  }

  @Override
  public Reply askSupply() throws LinkException {
    return port.ask(WorkingMode.SUPPLY_VOLTAGE, SETTING_PATIENCE);
  }

  @Override
  public void closeProtocol() throws LinkException {
    port.ask(WorkingMode.CLOSE_PROTOCOL, PATIENCE);
  }
}
