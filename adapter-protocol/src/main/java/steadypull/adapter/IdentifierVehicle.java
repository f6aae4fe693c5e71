package steadypull.adapter;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import steadypull.adapter.diagnostic.ParametersByIdentifier;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * A vehicle that may tell its parameters behind data identifiers only. Where nobody answers service
 * 01, the search asks for the first identifier; if that is answered, every request is turned into
 * its counterpart and every answer back, so that above this wall the vehicle is like any other.
 * Reader thread only.
 */
final class IdentifierVehicle implements VehiclePort {
  /** Behind the protocol's number where parameters stand behind identifiers. */
  private static final String MARK = "U";

  private static final int SEARCHES_BETWEEN_DOUBTS = 5;
  private static final Payload FIRST_MAP = Payload.ofHex("0100");
  private static final int NEGATIVE = 0x7F;

  private final VehiclePort port;
  private final MessageBuffer messages = new MessageBuffer();
  private ParametersByIdentifier parameters = new ParametersByIdentifier();
  private boolean isByIdentifier;
  private int quietSearches;

  IdentifierVehicle(VehiclePort port) {
    this.port = port;
  }

  @Override
  public Reply search(String firstProtocol) throws LinkException {
    boolean wasByIdentifier = firstProtocol.endsWith(MARK);
    String first = firstProtocol.replace(MARK, "");
    if (wasByIdentifier && answersByIdentifier(first)) {
      return Reply.Data.PLAIN;
    }
    Reply reply = port.search(first);
    // Until another vehicle answers, it is the one that was known.
    isByIdentifier = wasByIdentifier && !(reply instanceof Reply.Data);
    return !wasByIdentifier && isWorthAsking(reply, first) && answersByIdentifier(first)
        ? Reply.Data.PLAIN
        : reply;
  }

  /**
   * Whether a vehicle that is silent may be of this kind. One that answered service 01 before most
   * likely sleeps; only now and then another may stand in its place.
   */
  private boolean isWorthAsking(Reply reply, String first) {
    boolean isQuiet = reply instanceof Reply.NoData || reply instanceof Reply.NotConnected;
    quietSearches = isQuiet ? quietSearches + 1 : 0;
    return isQuiet && (first.isEmpty() || quietSearches % SEARCHES_BETWEEN_DOUBTS == 0);
  }

  /** Whether a control unit tells parameters by identifier; then its answer is taken. */
  private boolean answersByIdentifier(String first) throws LinkException {
    if (port.searchCan(first, ParametersByIdentifier.FIRST_MAP) instanceof Reply.Data) {
      parameters = new ParametersByIdentifier();
      messages.clear();
      take(FIRST_MAP);
      isByIdentifier =
          messages.messages().stream()
              .anyMatch(message -> message.payload().startsWith(0x41, 0x00));
      return isByIdentifier;
    }
    return false;
  }

  /** Takes what the port brought; whether anything in it is more than a refusal. */
  private boolean take(Payload asked) {
    boolean isAnswered = false;
    for (Message message : port.messages().messages()) {
      Payload turned = parameters.answer(asked, message.controlUnit(), message.payload());
      messages.add(new Message(message.controlUnit(), turned));
      isAnswered |= !turned.startsWith(NEGATIVE);
    }
    return isAnswered;
  }

  @Override
  public Reply searchCan(String firstProtocol, Payload question) throws LinkException {
    return port.searchCan(firstProtocol, question);
  }

  @Override
  public Reply ask(VehicleRequest request, Duration patience) throws LinkException {
    if (!isByIdentifier) {
      return port.ask(request, patience);
    }
    messages.clear();
    Reply reply = new Reply.NoData();
    for (Payload part : parts(request.payload())) {
      reply = better(reply, askPart(request, part, patience));
    }
    return reply;
  }

  /** Parameters whose lengths are not known yet have to be asked for one by one. */
  private List<Payload> parts(Payload payload) {
    boolean isSeveral = payload.at(0) == 0x01 && payload.size() > 2;
    if (!isSeveral || (parameters.isLearnt(payload) && payload.size() - 1 <= mostParameters())) {
      return List.of(payload);
    }
    List<Payload> parts = new ArrayList<>();
    for (int i = 1; i < payload.size(); i++) {
      parts.add(Payload.of(new byte[] {0x01, (byte) payload.at(i)}));
    }
    return parts;
  }

  private Reply askPart(VehicleRequest request, Payload part, Duration patience)
      throws LinkException {
    Reply reply = new Reply.NoData();
    for (Payload question : parameters.questions(part)) {
      reply = port.ask(turned(request, part, question), patience);
      if (take(part)) {
        break;
      }
    }
    return reply;
  }

  /** Every identifier is a byte longer than a parameter's number, in the answer too. */
  private static VehicleRequest turned(VehicleRequest request, Payload part, Payload question) {
    boolean isWhole = part.equals(request.payload()) && request.answerBytes() > 0;
    int answerBytes = isWhole ? request.answerBytes() + question.size() - part.size() : 0;
    return new VehicleRequest(request.unit(), question, answerBytes);
  }

  /** Of the replies to parts of one request the one that brought data, else the last. */
  private static Reply better(Reply before, Reply now) {
    return before instanceof Reply.Data ? before : now;
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public MessageFormat format() {
    return port.format();
  }

  @Override
  public String protocolNumber() {
    String number = port.protocolNumber();
    return isByIdentifier ? number + MARK : number;
  }

  @Override
  public String protocol() {
    return isByIdentifier ? port.protocol() + ", by identifier" : port.protocol();
  }

  @Override
  public MessageBuffer messages() {
    return isByIdentifier ? messages : port.messages();
  }

  @Override
  public boolean canAddress(String unit) {
    return port.canAddress(unit);
  }

  @Override
  public int mostParameters() {
    return isByIdentifier ? ParametersByIdentifier.MOST_PARAMETERS : port.mostParameters();
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
  public void closeProtocol() throws LinkException {
    port.closeProtocol();
  }

  @Override
  public boolean tellsRestart() throws LinkException {
    return port.tellsRestart();
  }

  @Override
  public Reply askSupply() throws LinkException {
    return port.askSupply();
  }
}
